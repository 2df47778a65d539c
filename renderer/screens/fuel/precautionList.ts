// Common practice at pumps and in workshops, no single source; the manual's own and local rules come first.

export const before = [
  { key: 'outdoors', words: 'Outdoors, nothing running or glowing nearby, an extinguisher at hand' },
  { key: 'bonded', words: 'Aeroplane, can and funnel bonded to each other before a cap is opened' },
  { key: 'cans', words: 'Cans made for fuel; a plastic one stands on the ground while it is filled' },
  { key: 'strained', words: 'Fuel strained, of the right kind, free of water' },
  { key: 'valves', words: 'Selector and crossfeed as the test needs them; vents free' },
] as const;

export const after = [
  { key: 'afterSelector', words: 'Selector and crossfeed back where flying needs them; caps on and locked' },
  { key: 'afterVents', words: 'Vents free, nothing left in the tank or the filler' },
  { key: 'afterFlow', words: 'Fuel flows to the engine; no leak at drains, lines and senders' },
  { key: 'afterSump', words: 'Sump drained and looked at in glass: right colour, no water, no dirt' },
  { key: 'afterSignOff', words: 'Signed off where local rules want it' },
] as const;
