import type { App } from '../../app/app.svelte.ts';
import { headingText } from './runwayEnds.ts';

/** '240° 10 G 20', 'variable 3', 'calm'; '' where none was reported. Figures in the person's unit of speed. */
export function windText(
  app: Pick<App, 'units'>,
  {
    windFromDeg,
    windMs,
    gustMs,
  }: { windFromDeg: number | null; windMs: number | null; gustMs: number | null },
): string {
  if (windMs === null) return '';
  const gust = gustMs === null ? '' : ` G ${app.units.figure(gustMs, 'speed', 'load')}`;
  if (windMs === 0 && gustMs === null) return 'calm';
  const from = windFromDeg === null ? 'variable' : headingText(windFromDeg);
  return `${from} ${app.units.figure(windMs, 'speed')}${gust}`;
}
