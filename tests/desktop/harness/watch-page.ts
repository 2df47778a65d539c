import type { Page } from 'playwright-core';

/** Hear errors of a page, refusals by its policy (they are errors on its console), and requests to anywhere else. */
export function watchPage(page: Page, origin: string, trouble: (sentence: string) => void): void {
  page.on('pageerror', (error) => {
    trouble(`error in the page: ${error.stack ?? error.message}`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      trouble(`on the console (${message.type()}): ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${origin}/`) && !/^(blob|data):/.test(url))
      trouble(`a request left the program: ${url}`);
  });
}
