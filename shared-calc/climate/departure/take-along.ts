import { InputProblem, requireRange } from '../../problem.ts';
import { airOf, type AirRows, type AirState } from './air-rows.ts';
import { asksAir, rowsOfLimits, type DepartureLimits } from './departure-limits.ts';
import { judge } from './judge.ts';

/** "Above this temperature or below this setting, do not go." */
export interface TakeAlong {
  /** Up to it, itself included, every limit is met ... */
  readonly temperatureMostC: number;
  /** ... down to this altimeter setting, itself included. */
  readonly settingLeastHpa: number;
  /** In air no damper than this. */
  readonly dewPointMostC: number;
  /** Whether any of the rows was hotter, or had a lower setting: where none was, that half of the rule says nothing. */
  readonly temperatureBinds: boolean;
  readonly settingBinds: boolean;
  /** How many of the rows given this rule lets go, and all of them. */
  readonly goesCount: number;
  readonly dayCount: number;
}

/** The figures that a person can read off an instrument: the rule is one of these, never something between them. */
export interface Steps {
  /** Rising. */
  readonly temperaturesC: readonly number[];
  /** Rising. */
  readonly settingsHpa: readonly number[];
}

/**
 * The rule to take along: one temperature and one altimeter setting that together keep every limit of air and runway.
 *
 * Solved so that the corner is safe: at the highest temperature and the lowest setting of the rule, in the dampest air of the
 * rows, every limit is still met, and so at every colder or higher-pressure place. (Two thresholds found each by itself, the
 * other figure being usual, would let a hot day of low pressure slip between them.) Of all such pairs of steps that one is
 * taken which lets most of the rows' days go; of equal ones the one of the highest setting, which is also the hottest. The wind is calm, or from behind as strong as
 * the tailwind limit allows; the wind limits themselves stand beside the rule.
 * @param air   the record's air at the hours of the windows, 1 row or more without NaN in temperature, dew point and setting
 * @param steps figures as read, 1 to 400 of each, rising
 * @returns null where no pair keeps the limits, or no limit depends on the air
 * @throws InputProblem for no row, RangeProblem for a number of steps out of its range or the field's elevation
 */
export function takeAlong(
  air: Pick<AirRows, 'temperatureC' | 'dewPointC' | 'settingHpa'>,
  steps: Steps,
  { elevationM, headingsDeg }: { readonly elevationM: number; readonly headingsDeg: readonly number[] },
  asked: DepartureLimits,
): TakeAlong | null {
  if (air.temperatureC.length === 0) throw new InputProblem('air', 'at least one row is needed');
  requireRange('temperaturesC.length', steps.temperaturesC.length, 1, 400, '');
  requireRange('settingsHpa.length', steps.settingsHpa.length, 1, 400, '');
  const ofAir: DepartureLimits = { ...asked, crosswindMostMs: null, tailwindMostMs: null, gustMostMs: null };
  if (!asksAir(ofAir)) return null;
  // Beyond what the rows had there is nothing to find.
  const temperaturesC = stepsAround(steps.temperaturesC, air.temperatureC);
  const settingsHpa = stepsAround(steps.settingsHpa, air.settingHpa);
  const hottestC = greatest(air.temperatureC);
  const lowestHpa = -greatest(air.settingHpa.map((each) => -each));
  const dewPointMostC = greatest(air.dewPointC);
  // Into the wind there is no tailwind, whatever the limit.
  const windMs = headingsDeg.length === 1 ? (asked.tailwindMostMs ?? 0) : 0;
  const windFromDeg = ((headingsDeg[0] ?? 0) + 180) % 360;
  const corners = settingsHpa.flatMap((settingHpa) =>
    temperaturesC.map((temperatureC): AirState => ({
      temperatureC,
      dewPointC: dewPointMostC,
      settingHpa,
      windFromDeg,
      windMs,
    })),
  );
  const { failed, observed } = judge(rowsOfLimits(airOf(corners, elevationM), headingsDeg, ofAir));
  let best: TakeAlong | null = null;
  settingsHpa.forEach((settingLeastHpa, settingIndex) => {
    // The hottest step up to which none fails: a table's answer need not be smooth, so nothing is skipped.
    let hottest = -1;
    for (let i = 0; i < temperaturesC.length; i++) {
      const corner = settingIndex * temperaturesC.length + i;
      if (observed[corner] !== 1 || failed[corner] !== 0) break;
      hottest = i;
    }
    const temperatureMostC = temperaturesC[hottest];
    if (temperatureMostC === undefined) return;
    let goesCount = 0;
    for (let row = 0; row < air.temperatureC.length; row++)
      if (
        (air.temperatureC[row] ?? NaN) <= temperatureMostC &&
        (air.settingHpa[row] ?? NaN) >= settingLeastHpa
      )
        goesCount++;
    if (best === null || goesCount >= best.goesCount)
      best = {
        temperatureMostC,
        settingLeastHpa,
        dewPointMostC,
        temperatureBinds: hottestC > temperatureMostC,
        settingBinds: lowestHpa < settingLeastHpa,
        goesCount,
        dayCount: air.temperatureC.length,
      };
  });
  return best;
}

/** The steps from the last one below all values to the first one above them. */
function stepsAround(steps: readonly number[], values: Float64Array): number[] {
  const most = greatest(values);
  const least = -greatest(values.map((each) => -each));
  return steps.filter(
    (step, i) => (steps[i + 1] ?? Infinity) > least && ((steps[i - 1] ?? -Infinity) < most || step <= most),
  );
}

function greatest(values: Float64Array): number {
  return values.reduce((most, each) => Math.max(most, each), -Infinity);
}
