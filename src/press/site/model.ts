import type {
  EditorsNote,
  SafetyLine,
  SettingRow,
  SheetFace,
  SourceLine,
  ValueLine,
} from '../matter/index.ts';
import type { CitedFormula } from './worked-model.ts';

/** A link with its words. */
export interface PageLink {
  /** Relative to the page that it stands on. */
  readonly href: string;
  readonly label: string;
}

/** What every page of a club's site says besides its own matter. */
export interface PageFrame {
  readonly language: string;
  /** What the browser calls the page: its own name, then the edition's where both have room. */
  readonly windowTitle: string;
  /** The edition's title, which leads home. */
  readonly siteTitle: string;
  readonly club: string | null;
  readonly edition: string | null;
  readonly date: string | null;
  readonly notice: string | null;
  /** Whether every page says that it is a draft. */
  readonly draft: boolean;
  /** The page's Content Security Policy. */
  readonly mayLoad: string;
  /** From the page to the folder of the site: empty, or `../`. */
  readonly root: string;
  /** The general pages; `isHere` for the page itself. */
  readonly pages: readonly (PageLink & { readonly isHere: boolean })[];
}

/** A unit as lists of the site name it. */
export interface UnitEntry extends PageLink {
  readonly number: number;
  readonly kind: string | null;
  /** What it fits there, where it stands: `Six, 1948-1950`; null where nothing is said. */
  readonly fits: string | null;
  readonly partNumbers: readonly string[];
  /** `DRAFT` or `PROOF`; null for a sheet that is released. */
  readonly mark: string | null;
}

/** The first page: what the site has, by marque and by part number. */
export interface HomePage extends PageFrame {
  readonly subtitle: string | null;
  readonly introduction: readonly string[];
  readonly altitude: string | null;
  readonly counts: string;
  /** Whether any sheet is not released yet. */
  readonly hasMarks: boolean;
  readonly marques: readonly {
    readonly id: string;
    readonly marque: string;
    readonly units: readonly UnitEntry[];
  }[];
  /** Ascending. */
  readonly partNumbers: readonly (PageLink & { readonly number: string })[];
}

/** A setting on its unit's page. */
export interface UnitSetting extends SettingRow {
  readonly id: string;
  /** The operation that makes it; null where none on the sheet does. */
  readonly madeBy: PageLink | null;
}

/** A caution at the head of a unit's work. */
interface UnitCaution extends SafetyLine {
  /** Whether the sheet's own words stand before the steps that meet it; else the whole stands here. */
  readonly isInWork: boolean;
}

/** An operation with the settings it makes. */
export interface UnitOperation {
  /** The number of the task; null for a heading that is no work. */
  readonly number: number | null;
  readonly id: string;
  /** HTML. */
  readonly title: string;
  /** HTML. */
  readonly html: string;
  readonly sets: readonly {
    readonly href: string;
    /** The number that the setting goes by. */
    readonly number: string;
    readonly label: string;
    readonly values: readonly ValueLine[];
    readonly gauge: string | null;
  }[];
}

/** A unit's page: its settings first, then the cautions, then the work. */
export interface UnitPage extends PageFrame {
  readonly number: number;
  readonly face: SheetFace;
  /** HTML. */
  readonly intro: string;
  readonly settings: readonly UnitSetting[];
  readonly cautions: readonly UnitCaution[];
  readonly operations: readonly UnitOperation[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  /** Settings that the sources differ on. */
  readonly rulings: readonly UnitSetting[];
  /** Whether any setting has figures that were worked and that nobody states. */
  readonly hasWorked: boolean;
  /** Whether marks tell how far figures are proved. */
  readonly hasProofs: boolean;
  /** Where it stands how they were worked. */
  readonly workedHref: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  readonly previous: PageLink | null;
  readonly next: PageLink | null;
}

/** The general cautions. */
export interface CautionsPage extends PageFrame {
  /** By kind of unit. */
  readonly groups: readonly {
    readonly id: string;
    readonly title: string;
    readonly cautions: readonly (SafetyLine & { readonly id: string })[];
  }[];
  /** What the club adds, a string a paragraph. */
  readonly clubSafety: readonly string[];
}

/** Every gauge that the edition's work needs. */
export interface GaugesPage extends PageFrame {
  readonly groups: readonly {
    readonly id: string;
    readonly title: string;
    readonly gauges: readonly {
      readonly label: string;
      readonly inch: string | null;
      readonly mm: string | null;
      readonly usedBy: readonly (PageLink & { readonly settings: string })[];
    }[];
  }[];
  readonly fewest: string | null;
  /** Settings that no gauge at hand serves. */
  readonly ungauged: readonly (PageLink & { readonly text: string })[];
}

/** Figures that are worked from others, and how. */
export interface WorkedPage extends PageFrame {
  readonly units: readonly WorkedUnit[];
  readonly formulas: readonly CitedFormula[];
}

/** The worked figures of one unit. */
export interface WorkedUnit extends PageLink {
  readonly id: string;
  /** How many stated figures were worked again from the others, in a sentence; null for none. */
  readonly proved: string | null;
  readonly figures: readonly {
    readonly setting: string;
    readonly href: string;
    readonly label: string;
    readonly place: string | null;
    readonly text: string;
    readonly told: string;
    readonly formula: PageLink;
  }[];
}
