import { dayText } from '../wording/day-text.ts';
import { thePlace, theTank } from '../wording/names.ts';
import type { LoadingInputs } from './case-of.ts';
import { loadFigures } from './case-of.ts';
import type { WeighingRecord } from './records.ts';

/** Paper on which a loading sheet is printed. */
export type SheetPaper = 'A4' | 'US Letter';

/** The curve by which a tank's gauge is read now; null where none counts any more. */
export interface StandingCalibration {
  readonly tankId: string;
  readonly curve: { readonly id: string; readonly adoptedOn: string } | null;
}

/**
 * What changed since a loading sheet was printed, each as a clause of a sentence with its day where it has one ("it was
 * weighed anew on 2 May 2026"); empty where the sheet still says what the library says. A name, a note, a comparison with
 * the manual or a wider list of people is no change.
 * @param calibrations of the tanks whose litres were read from their gauges; litres that were typed rest on none
 */
export function sheetChanges(
  printed: LoadingInputs,
  now: LoadingInputs,
  calibrations: readonly StandingCalibration[],
): string[] {
  return [
    ...weighingChange(printed.weighing, now.weighing),
    ...aeroplaneChanges(printed, now),
    ...(differ(loadingOf(printed), loadingOf(now)) ? ['the loading itself was changed'] : []),
    ...peopleChanges(printed, now),
    ...calibrationChanges(printed, calibrations),
  ];
}

function weighingChange(printed: WeighingRecord | null, now: WeighingRecord | null): string[] {
  if (!differ(emptyOf(printed), emptyOf(now))) return [];
  const old = printed === null ? '' : dayText(printed.weighedOn);
  if (now === null) return [`the weighing of ${old} was withdrawn`];
  if (printed !== null && now.weighedOn < printed.weighedOn)
    return [`the weighing of ${old} was withdrawn for that of ${dayText(now.weighedOn)}`];
  const day = dayText(now.weighedOn);
  return [
    now.how === 'equipment change' ? `its equipment was changed on ${day}` : `it was weighed anew on ${day}`,
  ];
}

function aeroplaneChanges({ aircraft: was }: LoadingInputs, { aircraft: is }: LoadingInputs): string[] {
  const rest = [
    [was.mac, is.mac],
    [was.leftRightMostKg, is.leftRightMostKg],
    [was.oil, is.oil],
    [was.groups, is.groups],
    [was.lateral, is.lateral],
  ];
  return [
    ...(differ(was.maxMasses, is.maxMasses) ? ['a maximum mass was changed'] : []),
    ...rowChanges(was.envelopes, is.envelopes, (name) =>
      name === '' ? 'an envelope' : `the envelope “${name}”`,
    ),
    ...rowChanges(was.stations, is.stations, thePlace),
    ...rowChanges(was.tanks, is.tanks, theTank),
    ...(rest.some(([a, b]) => differ(a, b))
      ? ['a limit or a reference line of the aeroplane was changed']
      : []),
  ];
}

function rowChanges<R extends { id: string; name: string }>(
  was: readonly R[],
  is: readonly R[],
  words: (name: string) => string,
): string[] {
  const gone = was.filter(({ id }) => !is.some((each) => each.id === id));
  return [
    ...is.flatMap((row) => {
      const old = was.find(({ id }) => id === row.id);
      if (old === undefined) return [`${words(row.name)} was added`];
      return differ(old, row) ? [`${words(row.name)} was changed`] : [];
    }),
    ...gone.map(({ name }) => `${words(name)} was removed`),
  ];
}

/** Those whose mass of the list counts. */
function peopleChanges(printed: LoadingInputs, now: LoadingInputs): string[] {
  return printed.loading.items.flatMap((item) => {
    if (item.typed !== null) return [];
    const [was, is] = [loadFigures(item, printed.people), loadFigures(item, now.people)];
    if (was === null || is === null) return [];
    if (was.massKg !== is.massKg || was.biasKg !== is.biasKg) return [`the mass of ${is.name} was changed`];
    const isAsSure = was.known === is.known && was.sdKg === is.sdKg;
    return isAsSure ? [] : [`how well the mass of ${is.name} is known was changed`];
  });
}

function calibrationChanges(printed: LoadingInputs, calibrations: readonly StandingCalibration[]): string[] {
  return printed.loading.fuel.flatMap(({ tankId, gauge }) => {
    const standing = calibrations.find((each) => each.tankId === tankId);
    if (gauge == null || standing === undefined || standing.curve?.id === gauge.calibrationId) return [];
    const tank = theTank(printed.aircraft.tanks.find(({ id }) => id === tankId)?.name ?? '');
    return standing.curve === null
      ? [`the calibration of ${tank} was withdrawn`]
      : [`${tank} was calibrated anew on ${dayText(standing.curve.adoptedOn)}`];
  });
}

/** By what is said, not by how it is kept: what a row has no figure for may be missing or null, in any order. */
function differ(was: unknown, is: unknown): boolean {
  return JSON.stringify(plain(was)) !== JSON.stringify(plain(is));
}

/** Names and where a figure comes from change nothing on the sheet but a word. */
const noFigures = ['name', 'source'];

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, part]) => part != null && !noFigures.includes(key))
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, part]) => [key, plain(part)]),
  );
}

function emptyOf(weighing: WeighingRecord | null) {
  if (weighing === null) return null;
  const { emptyMassKg, emptyArmM, massSdKg, armSdM, unusableFuelIncluded, oilIncluded } = weighing;
  const { lateralArmM, lateralArmSdM } = weighing;
  const lateral = [lateralArmM, lateralArmSdM];
  return [emptyMassKg, emptyArmM, massSdKg, armSdM, unusableFuelIncluded, oilIncluded, lateral];
}

function loadingOf({ loading }: LoadingInputs) {
  const { category, items, fuel, burn, flight } = loading;
  return [category, items, fuel, burn, flight];
}
