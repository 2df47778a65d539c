import { expect, test } from 'vitest';
import {
  draftOf,
  mappingOf,
  withRole,
  type Proposed,
} from '../../../../renderer/screens/weather/mappingDraft.ts';

const proposed: Proposed = {
  fileName: 'table.csv',
  isKnownKind: false,
  delimiter: ',',
  linesBefore: 2,
  columns: ['when', 'temp', 'rh', 'p', 'note'].map((name) => ({ name, examples: [] })),
  mapping: {
    delimiter: ',',
    linesBefore: 2,
    time: { kind: 'stamp', column: 'when', order: 'day first' },
    zone: { kind: 'offset', minutes: -300 },
    station: null,
    values: [
      { quantity: 'temperature', column: 'temp', unit: 'degF' },
      { quantity: 'humidity', column: 'rh', unit: 'percent' },
      { quantity: 'sea-level pressure', column: 'p', unit: 'inHg' },
    ],
    nature: 'observed',
  },
  remembered: false,
  reasons: [],
  warmestPrintedHour: null,
  choices: [
    { quantity: 'temperature', units: ['degC', 'degF'] },
    { quantity: 'dew point', units: ['degC', 'degF'] },
    { quantity: 'humidity', units: ['percent'] },
    { quantity: 'station pressure', units: ['hPa', 'inHg'] },
    { quantity: 'sea-level pressure', units: ['hPa', 'inHg'] },
  ],
};

test('a proposal that is left as it is comes back as it was', () => {
  expect(mappingOf(draftOf(proposed), proposed)).toEqual(proposed.mapping);
});

test('a column takes a role from the one that had it, and says what is missing then', () => {
  const turned = withRole(draftOf(proposed), 'note', 'temperature', proposed.choices);
  expect(turned.columns.find(({ name }) => name === 'temp')?.role).toBe('not used');
  expect(turned.columns.find(({ name }) => name === 'note')).toEqual({
    name: 'note',
    role: 'temperature',
    unit: 'degC',
  });
  const without = (name: string) => mappingOf(withRole(draftOf(proposed), name, 'not used', []), proposed);
  expect(without('temp')).toMatch(/which column is the temperature/);
  expect(without('rh')).toMatch(/dew point or the humidity/);
  expect(without('p')).toMatch(/a pressure/);
  expect(without('when')).toMatch(/date and time/);
});

test('date and hour may stand in columns of their own', () => {
  let draft = draftOf({ ...proposed, mapping: null });
  for (const [name, role] of [
    ['when', 'year'],
    ['temp', 'month'],
    ['rh', 'day'],
    ['p', 'hour'],
  ] as const)
    draft = withRole(draft, name, role, proposed.choices);
  expect(mappingOf(draft, proposed)).toMatch(/temperature/);
});
