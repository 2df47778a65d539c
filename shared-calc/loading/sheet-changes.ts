import type { LoadingInputs } from './case-of.ts';

/** Paper on which a loading sheet is printed. */
export type SheetPaper = 'A4' | 'US Letter';

/**
 * What changed since a loading sheet was printed, as words for a list ("the empty weight"); empty where the sheet still
 * says what the library says. A name, a note or a wider list of people is no change.
 */
export function sheetChanges(printed: LoadingInputs, now: LoadingInputs): string[] {
  const changes: string[] = [];
  if (differ(printed, now, emptyOf)) changes.push('the empty weight');
  if (differ(printed, now, aeroplaneOf)) changes.push('figures of the aeroplane');
  if (differ(printed, now, loadingOf)) changes.push('the loading');
  if (differ(printed, now, peopleOf)) changes.push('the mass of somebody or something aboard');
  return changes;
}

function differ(a: LoadingInputs, b: LoadingInputs, part: (inputs: LoadingInputs) => unknown): boolean {
  return JSON.stringify(part(a)) !== JSON.stringify(part(b));
}

function emptyOf({ weighing }: LoadingInputs) {
  if (weighing === null) return null;
  const { emptyMassKg, emptyArmM, massSdKg, armSdM, unusableFuelIncluded, oilIncluded } = weighing;
  return [emptyMassKg, emptyArmM, massSdKg, armSdM, unusableFuelIncluded, oilIncluded];
}

function aeroplaneOf({ aircraft }: LoadingInputs) {
  const { mac, maxMasses, leftRightMostKg, oil, stations, groups, tanks, envelopes } = aircraft;
  return [mac, maxMasses, leftRightMostKg, oil, stations, groups, tanks, envelopes];
}

function loadingOf({ loading }: LoadingInputs) {
  const { category, items, fuel, burn, flight } = loading;
  return [category, items, fuel, burn, flight];
}

/** Those whose mass of the list counts, in the order of the loading. */
function peopleOf({ loading, people }: LoadingInputs) {
  return loading.items.map(({ personId, typed }) => {
    const person = typed === null ? people.find(({ id }) => id === personId) : undefined;
    return person === undefined ? null : [person.massKg, person.known, person.sdKg, person.biasKg];
  });
}
