export { serve } from './server.ts';
