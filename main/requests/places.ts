import { z } from 'zod';

/** North positive. */
export const latitudeDeg = z.number().min(-90).max(90);
/** East positive. */
export const longitudeDeg = z.number().min(-180).max(180);
/** Above mean sea level. The Dead Sea's shore lies at -430 m; the highest aerodromes at some 4 500 m. */
export const elevationM = z.number().min(-500).max(6000);
