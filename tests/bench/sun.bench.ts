import { solarElevationDeg } from '../../shared-calc/sun/solar-elevation.ts';
import { sunDay } from '../../shared-calc/sun/sun-day.ts';
import { beside, machineLine } from './measure.ts';

// The sun's lines of a season picture: rise, set, dawn and dusk of each day of a year. The plainest other way looks at the
// elevation every minute of the day.
const LATITUDE_DEG = 46.5;
const LONGITUDE_DEG = 8.1;
const YEAR_START_S = Date.UTC(2026, 0, 1, 12) / 1000;
const DAYS = 365;

console.log(machineLine());

beside(
  'sun: rise, set, dawn and dusk of a year',
  DAYS,
  () => {
    let sumS = 0;
    for (let day = 0; day < DAYS; day += 1) {
      sumS += sunDay(YEAR_START_S + day * 86_400, LATITUDE_DEG, LONGITUDE_DEG).sun.upEpochS ?? 0;
    }
    return sumS;
  },
  {
    name: 'a look at every minute',
    run: () => {
      let crossings = 0;
      for (let day = 0; day < DAYS; day += 1) {
        let before = -90;
        for (let minute = 0; minute < 1440; minute += 1) {
          const now = solarElevationDeg(
            YEAR_START_S + day * 86_400 + minute * 60,
            LATITUDE_DEG,
            LONGITUDE_DEG,
          );
          for (const threshold of [-50 / 60, -6]) {
            if (before < threshold !== now < threshold) crossings += 1;
          }
          before = now;
        }
      }
      return crossings;
    },
  },
);

const LOOKS = 100_000;
beside('sun: elevation at an instant', LOOKS, () => {
  let sum = 0;
  for (let i = 0; i < LOOKS; i += 1)
    sum += solarElevationDeg(YEAR_START_S + i * 977, LATITUDE_DEG, LONGITUDE_DEG);
  return sum;
});
