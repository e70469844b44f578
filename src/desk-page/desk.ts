import { Page } from './page.ts';

/** Starts the page. */
const nonce = document.documentElement.getAttribute('data-nonce') ?? '';
const page = new Page(nonce);
void page.start();
