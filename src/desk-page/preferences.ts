/** What a person chose for this browser; the text of sheets is never kept here. */
export const preferences = {
  get: (name: string): string | null => {
    try {
      return localStorage.getItem(`gaugeleaf-${name}`);
    } catch {
      return null;
    }
  },
  set: (name: string, value: string): void => {
    try {
      localStorage.setItem(`gaugeleaf-${name}`, value);
    } catch {
      // A browser that keeps nothing: it is asked again next time.
    }
  },
};
