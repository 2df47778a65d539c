import { describe, expect, test } from 'vitest';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { columnName, reviewAnswer } from '../../../shared-calc/wording/review.ts';
import { judgedCell, type ReviewCell } from '../../../shared-calc/wording/review-cell.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../main/example-aircraft.ts';
import { weighingOf } from './example-weighing.ts';

const units = UNIT_PRESETS.metric;
/** Without spaces that do not break and joiners, as a person reads it. */
const plain = (text: string) => text.replaceAll(/[\u00a0\u2009]/g, ' ').replaceAll('\u2060', '');
const said = (...given: Parameters<typeof reviewAnswer>) => plain(textOf(reviewAnswer(...given)));

const nothing: ReviewCell = {
  verdict: 'not checked',
  lead: '',
  where: '',
  met: null,
  isHidden: false,
  whole: '',
  share: null,
  limitId: null,
  marginM: null,
  marginKg: null,
  afterTakeOffS: null,
  span: null,
};
const inside = (mm: number): ReviewCell => ({
  ...nothing,
  verdict: 'inside',
  lead: `${String(mm)} mm to the aft limit`,
  where: 'at landing',
  share: mm / 100,
});
const outside = (mm: number, isHidden = false): ReviewCell => ({
  ...nothing,
  verdict: 'outside',
  lead: `Outside the aft limit by ${String(mm)} mm`,
  met: 'the aft limit is met 1 h 52 min after take-off',
  isHidden,
  share: -mm / 100,
});

describe('the answer above the table', () => {
  test('counts what is outside, names the limit that checking the ends would not show, and the least margin of the rest', () => {
    const rows = [
      { name: 'Ines', cells: [inside(30), outside(1, true)] },
      { name: 'Jonas', cells: [inside(12), outside(9)] },
    ];
    expect(said(rows, ['40 L', '60 L'])).toBe(
      'Two of four are outside; with Ines and 60 L the aft limit is met 1 h 52 min after take-off. ' +
        'Checking take-off and landing alone would not show all of it. ' +
        'Of those inside, least margin 12 mm to the aft limit: Jonas, 40 L, at landing.',
    );
  });

  test('names who is outside in every column', () => {
    const rows = [
      { name: 'Ines', cells: [inside(30), inside(20)] },
      { name: 'Jonas', cells: [outside(3), outside(9)] },
    ];
    expect(said(rows, ['40 L', '60 L'])).toContain('Jonas is outside in every column.');
  });

  test('says that all are inside, with the least margin', () => {
    expect(said([{ name: 'Ines', cells: [inside(30), inside(20)] }], ['40 L', '60 L'])).toBe(
      'Both are inside. Least margin 20 mm to the aft limit: Ines, 60 L, at landing.',
    );
  });

  test('begins with what is outside, strong, and has one strong part', () => {
    const answer = reviewAnswer([{ name: 'Ines', cells: [outside(3), inside(20)] }], ['40 L', '60 L']);
    expect(answer[0]?.[0]).toEqual({ text: 'One of two is outside', strong: true });
    expect(answer.flat().filter(({ strong }) => strong)).toHaveLength(1);
  });

  test('says how many could not be checked and why, and how many do not fit, and calls neither inside', () => {
    const rows = [
      {
        name: 'Ines',
        cells: [
          { ...nothing, where: 'The empty weight and its arm have not been entered.' },
          { ...nothing, verdict: 'does not fit' as const },
          inside(20),
        ],
      },
    ];
    expect(said(rows, ['20 L', '6 h', '40 L'])).toBe(
      'One of three is inside. Least margin 20 mm to the aft limit: Ines, 40 L, at landing. ' +
        'One asks for more fuel than the tanks hold. ' +
        'One could not be checked: The empty weight and its arm have not been entered.',
    );
  });

  test('has figures where there are more cells than words', () => {
    const cells = Array.from({ length: 20 }, (_, i) => (i < 3 ? outside(3) : inside(20)));
    expect(said([{ name: 'Ines', cells }], cells.map(String))).toMatch(/^3 of 20 are outside;/);
  });
});

describe('the words of a cell', () => {
  const aircraft = exampleAircraft();
  const people = [examplePerson('mara', 'Mara', 68)];
  const cellOf = (alter: (loading: ReturnType<typeof exampleLoading>) => void) => {
    const loading = exampleLoading();
    alter(loading);
    return judgedCell({ aircraft, weighing: weighingOf(aircraft.id), loading, people }, units).cell;
  };

  test('inside: the least margin with its limit and its place, as the loading itself says them', () => {
    const cell = cellOf(() => undefined);
    const whole = plain(cell.whole);
    expect(cell.verdict).toBe('inside');
    expect(whole).toContain(`Least margin ${plain(cell.lead)}, ${plain(cell.where)}.`);
    expect(cell.span).not.toBeNull();
  });

  test('outside: the limit that is met first comes first, though another is passed by more', () => {
    // 600 - 318 - 68 - 15 kg leave 199 kg for the other seat and fuel; 140 kg with 59.3 kg of fuel is 0.3 kg too much, and
    // 30 kg over the seat's limit, which holds from the ramp on.
    const cell = cellOf((loading) => {
      loading.items.push({
        id: 'item-3',
        stationId: 'right-seat',
        seatArmM: null,
        personId: null,
        typed: { name: 'Load', massKg: 140, known: 'weighed', sdKg: 0, biasKg: 0 },
      });
    });
    expect(cell.verdict).toBe('outside');
    expect(plain(cell.lead)).toBe('Right seat: 30.0 kg over its limit');
    expect(cell.where).toMatch(/more limit/);
    expect(plain(cell.whole)).toContain('Too heavy to take off');
  });

  test('a reserve that is not kept is said where every limit is', () => {
    const cell = cellOf((loading) => {
      loading.flight.landingAfterS = 14_400;
    });
    // Low figures: 80.5 - 1.5 = 79 L, 4 h 23 min at 18 L/h; less 45 min 3 h 38 min.
    expect(cell).toMatchObject({
      verdict: 'outside',
      lead: 'Reserve not kept',
      met: 'the reserve is not kept',
    });
    expect(plain(cell.where)).toBe('land by 3 h 38 min');
  });

  test('what is missing is said and is no verdict', () => {
    const cell = judgedCell({ aircraft, weighing: null, loading: exampleLoading(), people }, units).cell;
    expect(cell).toMatchObject({ verdict: 'not checked', lead: 'Not checked', share: null });
    expect(cell.where).toContain('The empty weight and its arm have not been entered.');
  });
});

test('columns are called by what a person types', () => {
  const aircraft = exampleAircraft();
  const named = (column: Parameters<typeof columnName>[0]) => plain(columnName(column, aircraft, units));
  expect(named({ id: 'c', kind: 'full' })).toBe('full tanks');
  expect(named({ id: 'c', kind: 'total', totalL: 60 })).toBe('60 L');
  expect(named({ id: 'c', kind: 'flight', flightS: 5400 })).toBe('1 h 30 min of flight');
  expect(named({ id: 'c', kind: 'tanks', fuel: [{ tankId: 'rear', litresL: 20.5 }] })).toBe(
    'Front tank 0 L, Rear tank 20.5 L',
  );
});
