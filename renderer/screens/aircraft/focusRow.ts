import { tick } from 'svelte';

/** Mark a table's row so that focus can be put into it: `data-row={id}`. Goes to its `nth` field or choice, from 0. */
export async function focusRow(id: string, nth: number): Promise<void> {
  await tick();
  const row = document.querySelector(`[data-row="${CSS.escape(id)}"]`);
  const field = row?.querySelectorAll<HTMLElement>('input, select')[nth];
  field?.focus();
  if (field instanceof HTMLInputElement) field.select();
}
