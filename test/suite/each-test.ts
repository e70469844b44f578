import { afterEach } from 'vitest';
import { removeFolders } from '../project/folder.ts';

// Test files of one worker share their modules: a module is loaded once, and this file for each of them,
// so that what is to be done after every test stands here.
afterEach(removeFolders);
