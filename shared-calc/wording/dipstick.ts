import type { TwoMeans } from '../fuel/dipstick/two-means.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong, type Sentence } from './parts.ts';

export interface TwoMeansParts {
  readonly found: TwoMeans;
  readonly gaugePlanL: number;
  readonly stickPlanL: number;
  /** 'dipstick' or 'sight tube'. */
  readonly stickWord: string;
  readonly units: Pick<UnitPreferences, 'volume'>;
}

/**
 * Gauge and stick held against each other before a flight: whether they agree, and which holds. The lower one is the
 * figure to plan on in either case; where they disagree, that is said and why it matters.
 * @example "Gauge and dipstick agree: plan on 18.2 L, the lower; the gauge says 18.2 L, the dipstick 19.0 L."
 */
export function twoMeansAnswer({ found, gaugePlanL, stickPlanL, stickWord, units }: TwoMeansParts): Sentence {
  const volume = (litres: number) => shown(Math.max(0, litres), 'volume', units.volume, 'plan');
  const lower = stickPlanL < gaugePlanL ? `by the ${stickWord}` : 'by the gauge';
  const lowerL = Math.min(gaugePlanL, stickPlanL);
  if (found.agree)
    return [
      plain(`Gauge and ${stickWord} agree: `),
      strong(`plan on ${volume(lowerL)}`),
      plain(
        `, the lower, ${lower}; the gauge says ${volume(gaugePlanL)}, the ${stickWord} ${volume(stickPlanL)}.`,
      ),
    ];
  const apart = shown(Math.abs(found.differenceL), 'volume', units.volume, 'excess');
  const reachL = (found.highL - found.lowL) / 2;
  return [
    plain(
      `Gauge and ${stickWord} do not agree: they are ${apart} apart, where their doubts explain at most `,
    ),
    plain(`${shown(reachL, 'volume', units.volume, 'plan')}. `),
    strong(`The lower holds: plan on ${volume(lowerL)}`),
    plain(`, ${lower}. Find out why before you fly.`),
  ];
}
