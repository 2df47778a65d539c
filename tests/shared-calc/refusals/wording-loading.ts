import { loadingVerdict } from '../../../shared-calc/wording/loading.ts';
import { plain, strong, textOf } from '../../../shared-calc/wording/parts.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [loadingVerdict, 'takes the result of assessLoading'],
    [plain, 'takes a text'],
    [strong, 'takes a text'],
    [textOf, 'takes sentences'],
  ],
};
