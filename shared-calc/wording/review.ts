import type { AircraftRecord } from '../loading/records.ts';
import type { ReviewColumnRecord } from '../loading/review-table/table-record.ts';
import { shownDuration } from '../units/duration-text.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { fieldText, unitSuffix } from '../units/shown.ts';
import { listWords } from './list-words.ts';
import { numberWord } from './number-words.ts';
import { plain, strong, type Sentence } from './parts.ts';
import type { ReviewCell } from './review-cell.ts';

/** A row of cells with its name, in the order of the columns. */
export interface NamedCells {
  readonly name: string;
  readonly cells: readonly ReviewCell[];
}

/** More rows than these are counted instead of named. */
const MOST_NAMED = 3;

/** What a column is called at its head and in sentences: "full tanks", "60 L", "2 h of flight". */
export function columnName(
  column: ReviewColumnRecord,
  { tanks }: Pick<AircraftRecord, 'tanks'>,
  units: Pick<UnitPreferences, 'volume'>,
): string {
  const litres = (litresL: number) =>
    `${fieldText(litresL, 'volume', units.volume)}${unitSuffix(units.volume)}`;
  switch (column.kind) {
    case 'full':
      return tanks.length === 0 ? 'no tanks' : tanks.length === 1 ? 'a full tank' : 'full tanks';
    case 'total':
      return litres(column.totalL);
    case 'tanks':
      return tanks
        .map(({ id, name }) => {
          const filled = column.fuel.find(({ tankId }) => tankId === id);
          return `${name} ${litres(filled?.litresL ?? 0)}`;
        })
        .join(', ');
    case 'flight':
      return `${shownDuration(column.flightS)} of flight`;
  }
}

/**
 * The answer above the review table: how many cells are outside, who always is, one of the others with its limit, the
 * least margin among those inside, and what could not be judged. The count is strong.
 * @param columnNames as columnName gives them
 */
export function reviewAnswer(rows: readonly NamedCells[], columnNames: readonly string[]): Sentence[] {
  const all = rows.flatMap(({ name, cells }) =>
    cells.map((cell, i) => ({ name, column: columnNames[i] ?? '', cell })),
  );
  if (all.length === 0) return [[plain('No scenarios to compare yet.')]];
  const outside = all.filter(({ cell }) => cell.verdict === 'outside');
  const inside = all.filter(({ cell }) => cell.verdict === 'inside');
  const unchecked = all.filter(({ cell }) => cell.verdict === 'not checked');
  const tooMuch = all.filter(({ cell }) => cell.verdict === 'does not fit');
  const sentences: Sentence[] = [];
  const always = rows.filter(
    ({ cells }) => cells.length > 1 && cells.every(({ verdict }) => verdict === 'outside'),
  );
  if (outside.length > 0) {
    const cited =
      citedOf(outside.filter(({ name }) => !always.some((row) => row.name === name))) ?? citedOf(outside);
    const one = `${isAre(outside.length)} outside`;
    sentences.push([
      strong(`${counted(outside.length, all.length)} ${one}`),
      plain(
        cited === null
          ? '.'
          : `; with ${cited.name} and ${cited.column} ${cited.cell.met ?? 'it is outside'}.`,
      ),
    ]);
    if (always.length > 0)
      sentences.push([
        plain(
          always.length > MOST_NAMED
            ? `${capital(numberWord(always.length))} rows are outside with every fuel load.`
            : `${listWords(always.map(({ name }) => name))} ${isAre(always.length)} outside in every column.`,
        ),
      ]);
    if (outside.some(({ cell }) => cell.isHidden))
      sentences.push([plain('Checking take-off and landing alone would not show all of it.')]);
  } else if (inside.length > 0) {
    sentences.push([
      strong(
        inside.length === all.length
          ? allInside(all.length)
          : `${counted(inside.length, all.length)} ${isAre(inside.length)} inside`,
      ),
      plain('.'),
    ]);
  }
  const least = leastOf(inside);
  if (least !== null)
    sentences.push([
      plain(outside.length > 0 ? 'Of those inside, least margin ' : 'Least margin '),
      plain(
        `${least.cell.lead}: ${least.name}, ${least.column}${least.cell.where === '' ? '' : `, ${least.cell.where}`}.`,
      ),
    ]);
  if (tooMuch.length > 0)
    sentences.push([
      plain(
        `${capital(numberWord(tooMuch.length))} ${tooMuch.length === 1 ? 'asks' : 'ask'} for more fuel than the tanks hold.`,
      ),
    ]);
  if (unchecked.length > 0) {
    const said = `${capital(numberWord(unchecked.length))} could not be checked: ${unchecked[0]?.cell.where ?? ''}`;
    sentences.push(
      inside.length + outside.length > 0 ? [plain(said)] : [strong('No verdict yet.'), plain(` ${said}`)],
    );
  }
  return sentences;
}

/** First what checking the two ends would not find, then the one furthest outside. */
function citedOf<C extends { cell: ReviewCell }>(cells: readonly C[]): C | null {
  const hidden = cells.filter(({ cell }) => cell.isHidden);
  return leastOf(hidden.length > 0 ? hidden : cells);
}

function leastOf<C extends { cell: ReviewCell }>(cells: readonly C[]): C | null {
  let least: C | null = null;
  for (const each of cells) {
    if (least === null || (each.cell.share ?? Infinity) < (least.cell.share ?? Infinity)) least = each;
  }
  return least;
}

/** "Four of twelve", "17 of 320". */
function counted(count: number, total: number): string {
  return total <= 12
    ? `${capital(numberWord(count))} of ${numberWord(total)}`
    : `${String(count)} of ${String(total)}`;
}

function allInside(total: number): string {
  if (total === 1) return 'It is inside all limits';
  return total === 2 ? 'Both are inside' : `All ${numberWord(total)} are inside`;
}

function isAre(count: number): string {
  return count === 1 ? 'is' : 'are';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
