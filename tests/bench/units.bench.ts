import { parseQuantity } from '../../shared-calc/units/parse-quantity.ts';
import { shown } from '../../shared-calc/units/shown.ts';
import { beside, machineLine, seeded } from './measure.ts';

// A screen shows some hundred figures after each step of a drag, and reads one field.
const N = 20_000;
const random = seeded(5);
const massesKg = Float64Array.from({ length: N }, () => 700 * random());
const typed = ['13.5 gal', '1 320 lb', '29,92 inHg', '7\' 4 1/2"', '-3.5C', '84.25', '2 h 35 min'] as const;
const quantities = ['volume', 'mass', 'pressure', 'arm', 'temperature', 'arm', 'duration'] as const;
const units = ['L', 'kg', 'hPa', 'mm', 'degC', 'mm', 'min'] as const;
const intl = new Intl.NumberFormat('en', { minimumFractionDigits: 1, maximumFractionDigits: 1 });

console.log(machineLine());

let letters = 0;
beside(
  'figures shown, rounded to the safe side',
  N,
  () => {
    for (const massKg of massesKg) letters += shown(massKg, 'mass', 'lb', 'allowance').length;
    return letters;
  },
  {
    name: 'Intl.NumberFormat, to the nearest',
    run: () => {
      for (const massKg of massesKg) letters += `${intl.format(massKg / 0.45359237)} lb`.length;
      return letters;
    },
  },
);

let sum = 0;
beside(
  'quantities read as typed',
  N,
  () => {
    for (let i = 0; i < N; i += 1) {
      const at = i % typed.length;
      const parsed = parseQuantity(typed[at] ?? '', quantities[at] ?? 'mass', units[at] ?? 'kg');
      if (parsed.ok) sum += parsed.valueSi;
    }
    return sum;
  },
  {
    name: 'parseFloat, which knows no units',
    run: () => {
      for (let i = 0; i < N; i += 1) sum += Number.parseFloat(typed[i % typed.length] ?? '');
      return sum;
    },
  },
);
