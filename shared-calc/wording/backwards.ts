import type { Answer, Found, Way } from '../loading/backwards/answer.ts';
import type { Company } from '../loading/backwards/companies.ts';
import type { AnswerUnits } from '../loading/backwards/subject.ts';
import type { LoadingInputs } from '../loading/case-of.ts';
import type { LoadingRecord } from '../loading/records.ts';
import { shownDuration } from '../units/duration-text.ts';
import { fieldText, shown, unitSuffix } from '../units/shown.ts';
import { listWords } from './list-words.ts';
import { timesInThousand } from './loading-odds.ts';
import { loadingReview } from './loading-review.ts';
import { leastMargin } from './loading.ts';
import { thePlace, theTank } from './names.ts';
import { textOf } from './parts.ts';

/** One value of an answer that can be taken by a press. */
export interface SaidWay {
  /** The verb on its button. */
  readonly verb: string;
  /** What the change is called, for undo. */
  readonly named: string;
  /** What taking it leaves: margin, odds, endurance. */
  readonly leaves: string;
  readonly after: LoadingRecord;
}

export interface SaidAnswer {
  readonly sentence: string;
  readonly ways: readonly SaidWay[];
}

/**
 * An answer as a sentence with its figures, and each of its values with what it leaves; a value that the loading has
 * already is said, but not offered.
 */
export function sayAnswer(answer: Answer, inputs: LoadingInputs, units: AnswerUnits): SaidAnswer {
  const { found, ways } = answer;
  return {
    sentence: `${sentenceOf(found, ways, units)}${sureWords(found, ways, units)}.`,
    ways: ways
      .filter(({ after }) => JSON.stringify(after) !== JSON.stringify(inputs.loading))
      .map((way) => ({
        verb: verbOf(found, way, units),
        named: nameOfChange(found, way, units),
        leaves: leavesOf(way, inputs, units),
        after: way.after,
      })),
  };
}

/** What a choice of passengers leaves room for, in the cells of a row; '' where there is nothing to say. */
export interface SaidCompany {
  readonly fuel: string;
  readonly leaveBehind: string;
  /** "120.3 kg, if the CG allows". */
  readonly left: string;
  /** What taking the row leaves; null where no quantity of fuel is inside. */
  readonly way: SaidWay | null;
}

/**
 * One row for passengers of this afternoon.
 * @param name what the loading would be called
 */
export function sayCompany(
  { leftBehind, fuelL, ways, leftKg }: Company,
  name: string,
  inputs: LoadingInputs,
  units: AnswerUnits,
): SaidCompany {
  const [largest] = ways;
  const taken = ways.at(-1);
  if (largest?.value == null || taken?.value == null) {
    const fuel = 'No quantity keeps this flight and its reserve inside, even with all things left behind';
    return { fuel, leaveBehind: '', left: '', way: null };
  }
  const sure = taken.isSure
    ? taken === largest
      ? ', nine times in ten'
      : `; for nine in ten ${volume(taken.value, units)}`
    : '';
  return {
    fuel: `${rangesText(fuelL, units)}${sure}`,
    leaveBehind: leftBehind.length === 0 ? 'nothing' : listWords(leftBehind),
    left: leftKg === null ? '' : `${shown(leftKg, 'mass', units.mass, 'margin')}, if the CG allows`,
    way: {
      verb: `Load it with ${volume(taken.value, units)}`,
      named: `${name} added`,
      leaves: leavesOf(taken, inputs, units),
      after: { ...taken.after, name },
    },
  };
}

/**
 * What stands above the answers.
 * @param isInside whether the loading keeps every limit as it is
 */
export function backwardsHeading(isInside: boolean, answers: readonly Pick<Answer, 'found'>[]): string {
  if (isInside) return 'As it is loaded it is inside. What there is still room for:';
  if (answers.length === 0)
    return 'No change of what is aboard, of the fuel or of the landing time brings this flight inside, nor any two of those that were tried together.';
  if (answers.every(({ found }) => found.kind === 'two changes'))
    return 'No single change brings this flight inside; two together do:';
  return answers.length === 1
    ? 'One change brings this flight inside:'
    : 'Each of these by itself brings this flight inside:';
}

function sentenceOf(found: Found, ways: readonly Way[], units: AnswerUnits): string {
  const value = ways[0]?.value ?? 0;
  switch (found.kind) {
    case 'largest load': {
      const most = mass(value, units);
      if (found.who === null) return `${capital(thePlace(found.place))} takes at most ${most} more`;
      const now = found.nowKg === null ? '' : `, where ${found.who} has ${massAsKept(found.nowKg, units)}`;
      return `Heaviest in ${thePlace(found.place)} with this fuel: ${most}${now}`;
    }
    case 'least load':
      return `${found.who} in ${thePlace(found.place)} would have to be at least ${mass(value, units)} instead of ${massAsKept(found.nowKg, units)}`;
    case 'fuel':
      return `Fuel ${where(found.tank)} ${rangesText(found.ranges, units)} keeps the whole flight inside; now ${volumeAsKept(found.nowL, units)}`;
    case 'longest flight':
      return `Longest flight with the reserve kept: land ${shownDuration(found.landByS)} after take-off, with ${volume(value, units)} ${where(found.tank)}`;
    case 'leave behind': {
      const piece = found.names.length === 1 ? '' : ` together`;
      if (found.hasPerson)
        return `Fly without ${listWords(found.names, 8)}, ${mass(found.massKg, units)}${piece}`;
      return `Leave behind ${listWords(found.names, 8)}, ${mass(found.massKg, units)}${piece}`;
    }
    case 'move':
      return found.isWhole
        ? `Move ${found.name} from ${thePlace(found.from)} to ${thePlace(found.to)}`
        : `Move at least ${mass(value, units)} of ${found.name} from ${thePlace(found.from)} to ${thePlace(found.to)}`;
    case 'ballast':
      return `At least ${mass(value, units)} of ballast, tied down, at ${thePlace(found.place)}; at most ${shown(found.mostKg, 'mass', units.mass, 'allowance')} there`;
    case 'swap seats': {
      const pilot = found.hasPilot ? ', only if the manual allows flying it from that seat' : '';
      return `Swap ${thePlace(found.seats[0])} and ${thePlace(found.seats[1])}${pilot}`;
    }
    case 'two changes':
      return `${sentenceOf(found.first, [], units)}; and ${lower(sentenceOf(found.second, ways, units))}`;
    case 'tank order':
      return `Burn ${found.words}, only if the manual allows this order`;
    case 'landing':
      return `Land ${shownDuration(found.fromS)} to ${shownDuration(found.toS)} after take-off: earlier it is outside a limit for landing, later the reserve is not kept`;
  }
}

/** "; for nine in ten 61.0 kg". */
function sureWords(found: Found, ways: readonly Way[], units: AnswerUnits): string {
  const [first, second] = ways;
  if (first?.value == null || first.isSure) return '';
  const quantity = quantityOf(found);
  if (quantity === null) return '';
  if (second?.value == null) return first.odds === null ? '' : '; no such figure is inside nine times in ten';
  return `; for nine in ten ${amount(second.value, quantity, units)}`;
}

function quantityOf(found: Found): 'mass' | 'volume' | null {
  const { kind } = found;
  if (kind === 'two changes') return quantityOf(found.second);
  if (kind === 'fuel') return 'volume';
  return kind === 'largest load' || kind === 'least load' || kind === 'move' || kind === 'ballast'
    ? 'mass'
    : null;
}

function verbOf(found: Found, way: Way, units: AnswerUnits): string {
  const quantity = quantityOf(found);
  switch (found.kind) {
    case 'leave behind':
      if (found.hasPerson) return 'Fly without';
      return found.names.length === 1 ? 'Leave it behind' : 'Leave them behind';
    case 'swap seats':
      return 'Swap them';
    case 'two changes':
      return way.value === null ? 'Do both' : `Do both, ${amount(way.value, quantity ?? 'mass', units)}`;
    case 'tank order':
      return 'Burn in this order';
    case 'landing':
      return `Land after ${shownDuration(way.value ?? 0)}`;
    case 'longest flight':
      return `Plan it with ${volume(way.value ?? 0, units)}`;
    case 'move':
      return way.value === null ? 'Move it' : `Move ${mass(way.value, units)}`;
    case 'ballast':
      return `Add ${mass(way.value ?? 0, units)}`;
    case 'largest load':
      return `${found.nowKg === null ? 'Add' : 'Take'} ${mass(way.value ?? 0, units)}`;
    default:
      return `Take ${quantity === null ? '' : amount(way.value ?? 0, quantity, units)}`;
  }
}

function nameOfChange(found: Found, way: Way, units: AnswerUnits): string {
  const value = way.value ?? 0;
  switch (found.kind) {
    case 'largest load':
    case 'least load':
      return `${found.who ?? `load at ${thePlace(found.place)}`} to ${mass(value, units)}`;
    case 'fuel':
      return `fuel ${where(found.tank)} to ${volume(value, units)}`;
    case 'longest flight':
      return `longest flight, ${volume(value, units)}`;
    case 'leave behind':
      return `${listWords(found.names, 2)} left behind`;
    case 'move':
      return `${found.name} to ${thePlace(found.to)}`;
    case 'ballast':
      return `ballast of ${mass(value, units)} at ${thePlace(found.place)}`;
    case 'swap seats':
      return 'seats swapped';
    case 'two changes':
      return `${nameOfChange(found.first, { ...way, value: null }, units)}, ${nameOfChange(found.second, way, units)}`.slice(
        0,
        120,
      );
    case 'tank order':
      return 'order of tanks';
    case 'landing':
      return 'landing time';
  }
}

/** "Least margin 3 mm to the aft limit, at landing; stays inside 912 times in 1 000; reserve kept until a landing 3 h 20 min after take-off." */
function leavesOf({ after, odds }: Way, inputs: LoadingInputs, units: AnswerUnits): string {
  const { result, reserve } = loadingReview({ ...inputs, loading: after }, units);
  const parts: string[] = [];
  if (result?.least != null) parts.push(textOf([leastMargin(result.least, result, units)]).slice(0, -1));
  if (odds !== null) parts.push(`stays inside ${timesInThousand(odds)}`);
  if (reserve !== null && reserve.landByS > 0)
    parts.push(`reserve kept until a landing ${shownDuration(reserve.landByS, 'plan')} after take-off`);
  return `${parts.join('; ')}.`;
}

/** "from 24.0 L to 61.5 L, or from 70.2 L to 96.0 L"; a range of one value is that value. */
function rangesText(ranges: readonly { from: number; to: number }[], units: AnswerUnits): string {
  return ranges
    .map(({ from, to }) => {
      const low = shown(from, 'volume', units.volume, 'needed');
      const high = shown(to, 'volume', units.volume, 'allowance');
      return low === high || from === to ? `of ${high}` : `from ${low} to ${high}`;
    })
    .join(', or ');
}

function where(tank: string | null): string {
  return tank === null ? 'in all tanks together' : `in ${theTank(tank)}`;
}

/** A figure that was rounded to its safe side when it was found. */
function amount(value: number, quantity: 'mass' | 'volume', units: AnswerUnits): string {
  return quantity === 'mass' ? mass(value, units) : volume(value, units);
}

function mass(massKg: number, units: AnswerUnits): string {
  return shown(massKg, 'mass', units.mass);
}

function volume(volumeL: number, units: AnswerUnits): string {
  return shown(volumeL, 'volume', units.volume);
}

function massAsKept(massKg: number, units: AnswerUnits): string {
  return `${fieldText(massKg, 'mass', units.mass)}${unitSuffix(units.mass)}`;
}

function volumeAsKept(volumeL: number, units: AnswerUnits): string {
  return `${fieldText(volumeL, 'volume', units.volume)}${unitSuffix(units.volume)}`;
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
