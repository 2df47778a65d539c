import { readReport } from '../../shared-calc/metar/report.ts';
import { beside, machineLine, seeded } from './measure.ts';

// A year of one station is 10,000 reports; an import reads ten years.
const N = 10_000;
const random = seeded(6);
const digits = (value: number, places: number) => String(Math.floor(value)).padStart(places, '0');
const reports = Array.from({ length: N }, () => {
  const [t, d] = [random() * 30, random() * 9];
  return (
    `METAR KXYZ ${digits(1 + random() * 28, 2)}${digits(random() * 24, 2)}53Z AUTO ${digits(random() * 36, 2)}0${digits(random() * 30, 2)}KT ` +
    `10SM FEW040 BKN120 ${digits(t, 2)}/${digits(d, 2)} A${digits(2960 + random() * 80, 4)} RMK AO2 SLP${digits(random() * 300, 3)} ` +
    `T0${digits(Math.floor(t) * 10, 3)}0${digits(Math.floor(d) * 10, 3)}`
  );
});

console.log(machineLine());
let sumC = 0;
beside(
  'reports read, all groups',
  N,
  () => {
    for (const report of reports) sumC += readReport(report).temperatureC ?? 0;
    return sumC;
  },
  {
    name: 'one regular expression for the tenths alone',
    run: () => {
      for (const report of reports) {
        const tenths = / T([01])(\d{3})/.exec(report);
        if (tenths !== null) sumC += Number(tenths[2]) / 10;
      }
      return sumC;
    },
  },
);
