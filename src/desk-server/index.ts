export { openDesk, type RunCommand } from './open-desk.ts';
