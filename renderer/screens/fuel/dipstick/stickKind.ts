import type { FieldKind } from '../../../ui/fieldKind.ts';
import { readNumber } from '../../../../shared-calc/units/parse-number.ts';

/** A field for a height on a stick, in millimetres or as '15.5 cm'; 'dry' is 0. */
export function stickKind(mostMm: number, widthCount = 5): FieldKind<number> {
  return {
    show: (mm) => String(Number(mm.toFixed(1))),
    read: (text) => {
      const trimmed = text.trim().toLowerCase();
      if (trimmed === '') return { value: null };
      if (trimmed === 'dry') return { value: 0, becomes: 'becomes 0 mm' };
      const unit = /\s*(mm|cm)$/.exec(trimmed)?.[1] ?? 'mm';
      const reading = readNumber(trimmed.replace(/\s*(mm|cm)$/, ''));
      if (reading.kind !== 'one')
        return { refused: `'${text.trim()}' is not a height. Write it like 155 or 15.5 cm.` };
      const value = reading.value * (unit === 'cm' ? 10 : 1);
      if (value < 0 || value > mostMm)
        return { refused: `${String(value)} mm is outside the stick: 0 to ${String(mostMm)} mm.` };
      return unit === 'cm' ? { value, becomes: `becomes ${String(Number(value.toFixed(1)))} mm` } : { value };
    },
    step: (value, steps) => Math.min(mostMm, Math.max(0, (value ?? 0) + steps)),
    widthCount,
    align: 'right',
  };
}
