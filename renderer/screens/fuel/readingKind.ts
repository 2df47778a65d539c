import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { readingText, type GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { parseReading } from '../../../shared-calc/fuel/parse-reading.ts';
import { readingRefusalSentence } from '../../../shared-calc/wording/fuel.ts';
import type { FieldKind } from '../../ui/fieldKind.ts';
import { positionOf } from '../../../shared-calc/fuel/position-of.ts';
import { readingOf } from './position.ts';

/** A field that takes what the needle shows, on the gauge's own scale: '5/8', 'E', 'F', '12 L', '3 bars'. */
export function readingKind(scale: GaugeScale, resolutionRatio: number): FieldKind<GaugeReading> {
  return {
    show: (reading) => readingText(reading, scale),
    read: (text) => {
      if (text.trim() === '') return { value: null };
      const parsed = parseReading(text, scale);
      if (parsed.ok) return { value: parsed.reading };
      // The field itself says that the text is kept.
      return {
        refused: readingRefusalSentence(text.trim(), parsed.refusal).replace(
          /[,;] ?(is )?kept as typed\b/,
          '',
        ),
      };
    },
    step: (reading, steps) =>
      readingOf((reading === null ? 0 : positionOf(reading)) + steps * resolutionRatio, resolutionRatio),
    widthCount: Math.max(6, readingText({ at: 'fullStop' }, scale).length),
    align: 'right',
  };
}
