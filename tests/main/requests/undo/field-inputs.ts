import type { FieldRecord } from '../../../../main/store/fields.ts';
import type { MemoryLibrary } from '../../memory-library.ts';
import type { MakeInput } from './change-inputs.ts';
import type { Draw } from './draw.ts';

async function someField(library: MemoryLibrary, draw: Draw): Promise<FieldRecord | null> {
  return draw.pick((await library.ask('fields.list', {})) as FieldRecord[]);
}

function newRunway(draw: Draw) {
  const headingDeg = draw.below(180);
  return {
    lengthM: 400 + draw.below(1000),
    widthM: draw.pick([null, 18, 30]),
    surface: 'grass',
    slopeRatio: draw.pick([null, 0, 0.02, -0.03]),
    ends: [
      { ident: 'A', trueHeadingDeg: headingDeg, displacedThresholdM: draw.below(100) },
      { ident: 'B', trueHeadingDeg: headingDeg + 180, displacedThresholdM: 0 },
    ],
  };
}

export const fieldInputs = {
  'fields.put': async (library, draw) => {
    const field = await someField(library, draw);
    if (field === null || draw.chance(0.3))
      return {
        field: {
          name: `Field ${draw.word()}`,
          latitudeDeg: 30 + draw.below(20),
          longitudeDeg: -110 + draw.below(20),
          elevationM: draw.below(2000),
          runways: [newRunway(draw)],
        },
      };
    const edit = draw.below(3);
    if (edit === 0) return { field: { ...field, elevationM: draw.below(2000) } };
    if (edit === 1) return { field: { ...field, runways: [...field.runways.slice(0, 15), newRunway(draw)] } };
    return { field: { ...field, runways: field.runways.slice(1) } };
  },
  'fields.remove': async (library, draw) => {
    const field = await someField(library, draw);
    return field === null || draw.chance(0.5) ? null : { id: field.id };
  },
} satisfies Record<string, MakeInput>;
