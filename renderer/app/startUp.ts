import type { OutputOf } from '../../main/requests/table.ts';
import { showAppearance } from './appearance.ts';
import type { Client } from './client.ts';
import { contrastOf, textPercentOf, themeOf } from './settings.svelte.ts';

/** How things stand before the window is drawn. */
export interface Start {
  status: OutputOf<'host.status'>;
  settings: Record<string, unknown>;
}

/** Ask which library is open and how the person wants to see it, and set theme and text scale before any layout. */
export async function startUp(client: Client): Promise<Start> {
  const status = await client.ask('host.status', {});
  const settings = status.problem === null ? await client.ask('settings.get', {}) : {};
  showAppearance(
    themeOf(settings['theme']),
    textPercentOf(settings['textPercent']),
    contrastOf(settings['contrast']),
  );
  return { status, settings };
}
