import type { SizeReading } from '../compare/index.ts';
import type { Project } from './project.ts';

/** How the sizes of an edition are read: by the dimensions that its kinds give each setting. */
export function sizeReading(project: Project): SizeReading {
  const { gauges } = project.context(project.root);
  return {
    gauges,
    dimensionsOf: (setting) => {
      for (const kind of project.kinds.values()) {
        const found = kind.settings.get(setting);
        if (found) return found.dimensions;
      }
      return undefined;
    },
  };
}
