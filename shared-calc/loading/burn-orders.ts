import type { LoadingRecord, TankRecord } from './records.ts';

type Burn = LoadingRecord['burn'];

/** An order in which the tanks can be burned, as one choice of a list. */
export interface BurnChoice {
  id: string;
  word: string;
  burn: Pick<Burn, 'kind' | 'tankIds' | 'everyMin'>;
}

/** With more tanks than this there are too many orders for a list; only turns of the given one are offered. */
const mostListedTanks = 4;
const usualMinutes = 30;

/** Every order of burning that can be chosen for these tanks. The manual decides which of them are allowed. */
export function burnChoices(
  tanks: readonly Pick<TankRecord, 'id' | 'name'>[],
  everyMin: number | null,
): BurnChoice[] {
  const ids = tanks.map(({ id }) => id);
  const nameOf = (id: string) => {
    const name = tanks.find((tank) => tank.id === id)?.name ?? id;
    return name.charAt(0).toLowerCase() + name.slice(1);
  };
  const orders = ids.length <= mostListedTanks ? permutations(ids) : turns(ids);
  const sequences = orders.map((tankIds) => ({
    id: `sequence ${tankIds.join(' ')}`,
    word: tankIds.map(nameOf).join(', then '),
    burn: { kind: 'sequence' as const, tankIds, everyMin: null },
  }));
  if (ids.length < 2) return sequences;
  const together = {
    id: 'together',
    word: ids.length === 2 ? 'both tanks together' : 'all tanks together',
    burn: { kind: 'together' as const, tankIds: ids, everyMin: null },
  };
  const alternating = turns(ids).map((tankIds) => ({
    id: `alternate ${tankIds.join(' ')}`,
    word: `in turn, ${nameOf(tankIds[0] ?? '')} first`,
    burn: { kind: 'alternate' as const, tankIds, everyMin: everyMin ?? usualMinutes },
  }));
  return [...sequences, together, ...alternating];
}

/** The choice that stands for an order; null for one that the list does not have. */
export function burnChoiceId({ kind, tankIds }: Burn): string {
  return kind === 'together' ? 'together' : `${kind} ${tankIds.join(' ')}`;
}

function permutations(ids: readonly string[]): string[][] {
  if (ids.length === 0) return [[]];
  return ids.flatMap((first) =>
    permutations(ids.filter((id) => id !== first)).map((rest) => [first, ...rest]),
  );
}

function turns(ids: readonly string[]): string[][] {
  return ids.map((_, index) => [...ids.slice(index), ...ids.slice(0, index)]);
}
