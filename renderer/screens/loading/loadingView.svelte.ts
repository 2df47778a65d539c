import type { App } from '../../app/app.svelte.ts';

/** Whether one loading is looked at or many side by side, and where in the table; found again on coming back. */
export class LoadingView {
  isTable = $state(false);
  /** The cell in hand; null in a place is its head. */
  rowId = $state<string | null>(null);
  columnId = $state<string | null>(null);
}

export function loadingView(app: App): LoadingView {
  return app.kept('loading.view', () => new LoadingView());
}
