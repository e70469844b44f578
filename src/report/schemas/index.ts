export { projectSchemas } from './project-schemas.ts';
