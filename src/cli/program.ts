import { Argument, Command, Option } from 'commander';
import { packageVersion } from '../project/index.ts';
import { examples } from './examples.ts';
import { formats, type Shell, shells } from './formats.ts';
import type { Io } from './io.ts';
import type { ExitStatus } from './run.ts';

const papers: readonly string[] = ['letter', 'a4', 'half-letter', 'a5'];

/** `--paper`, in any case: A4 is how everybody writes it. */
function paperOption(says: string): Option {
  const option = new Option('-p, --paper <paper>', says).choices([...papers]);
  const parse = option.parseArg;
  return option.argParser((written: string) => {
    const paper = written.trim().toLowerCase().replace(/[ _]+/g, '-');
    return parse ? parse(papers.includes(paper) ? paper : written, undefined) : paper;
  });
}

/**
 * The commands with their arguments and options. Each loads its own code only when it is called:
 * checking a sheet never waits for the press.
 */
export function buildProgram(io: Io, done: (status: ExitStatus) => void): Command {
  const program = new Command('gaugeleaf')
    .description('Proves adjustment sheets for old machinery and prints bench cards and booklets.')
    .version(packageVersion(), '-V, --version', 'print the version')
    .option('-C, --directory <folder>', 'before the command: as if it were given in that folder')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('(gaugeleaf --help lists what there is)')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => void io.stdout.write(text),
      writeErr: (text) => void io.stderr.write(text),
      outputError: (text, write) => write(text.replace(/^error: /, 'gaugeleaf: ')),
      getOutHelpWidth: () => io.stdout.columns ?? 80,
      getErrHelpWidth: () => io.stderr.columns ?? 80,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .addHelpText(
      'after',
      `
Exit status: 0 nothing wrong; 1 findings that stop the press; 2 the command could not be
carried out. NO_COLOR turns colors off, FORCE_COLOR turns them on.`,
    );

  program
    .command('check')
    .description('look for what is wrong or doubtful in sheets')
    .argument(
      '[paths...]',
      'sheets or folders; - is standard input; without any, the sheets of this project',
    )
    .addOption(
      new Option('-f, --format <format>', 'how findings are written')
        .choices(formats)
        .default('text'),
    )
    .option('--fix', 'mend what is certain, then show what is left')
    .option('-a, --all', 'show accepted findings too, with the reasons')
    .option('-q, --quiet', 'write findings alone, and nothing where there are none')
    .option('--as <path>', 'with -: the file that standard input is checked as')
    .option('--no-cache', 'check every sheet anew, and keep nothing for the next time')
    .option('--trace', 'show the state of the unit after every step, in place of findings')
    .option('-w, --watch', 'again at each save, until Ctrl-C')
    .action(async (paths: string[], options) => {
      if (options.watch === true) {
        const { watchCheck } = await import('./watch-check.ts');
        return done(await watchCheck(paths, options, io));
      }
      if (paths.includes('-')) {
        const { checkStdin } = await import('./check-stdin.ts');
        return done(await checkStdin(paths, options, io));
      }
      const { check } = await import('./commands/check.ts');
      done(await check(paths, options, io));
    });

  const printing = (command: Command): Command =>
    command
      .addOption(paperOption('paper to print on'))
      .option('-o, --out <path>', 'where to write; - is standard output')
      .option('--proof', 'print in spite of findings, with DRAFT across every page')
      .option('--browser <path>', 'browser to print with, or `packaged` for the built-in one');

  printing(
    program
      .command('card')
      .description('print bench cards')
      .argument('[sheets...]', 'sheets, by path or by name')
      .option('--all', 'the cards of all sheets of the edition')
      .option('--kind <name>', 'the cards of all its sheets of one kind, such as carburetor')
      .addOption(
        new Option(
          '--punch <holes>',
          'mark where to punch it; room for the holes is always left',
        ).choices(['iso-838', 'three-hole']),
      )
      .option('--trim-marks', 'mark where to trim it for a laminating pouch of its own size')
      .option('-w, --watch', 'again at each save, until Ctrl-C'),
  ).action(async (sheets: string[], options) => {
    if (options.watch === true) {
      const { watchCard } = await import('./watch-card.ts');
      return done(await watchCard(sheets, options, io));
    }
    const { card } = await import('./commands/card.ts');
    done(await card(sheets, options, io));
  });

  printing(
    program
      .command('booklet')
      .description('print the booklet that edition.yaml describes')
      .addArgument(new Argument('[folder]', 'a project folder; without one, the one around you'))
      .option('--only <names...>', 'the chapters of these sheets alone, with their front matter')
      .option('--no-cache', 'print every page anew, and keep none for the next time')
      .option('--imposed', 'also as sheets to print on both sides and fold; alone with -o -')
      .option('--paper-thickness <mm>', 'of a sheet, such as 0.1: moves inner pages to the fold')
      .option('--signatures <sheets>', 'the most sheets folded together; 8 if there are over 20')
      .option('--marks', 'mark where to fold and trim the sheets'),
  ).action(async (folder: string | undefined, options) => {
    const { booklet } = await import('./commands/booklet.ts');
    done(await booklet(folder, options, io));
  });

  program
    .command('pages')
    .description(
      'write the edition as pages for a site: HTML without a script, style and fonts beside',
    )
    .addArgument(new Argument('[folder]', 'a project folder; without one, the one around you'))
    .option('-o, --out <folder>', 'where to write them; print/pages of the project without it')
    .option('--proof', 'write them in spite of findings, with DRAFT on every page')
    .action(async (folder: string | undefined, options) => {
      const { pages } = await import('./commands/pages.ts');
      done(await pages(folder, options, io));
    });

  printing(
    program
      .command('gauges')
      .description('print gauges of paper to cut out, for settings that paper is fine enough for')
      .argument('<sheet>', 'a sheet, by path or by name'),
  ).action(async (sheet: string, options) => {
    const { gauges } = await import('./commands/gauges.ts');
    done(await gauges(sheet, options, io));
  });

  program
    .command('size')
    .description('every way to write a size, and the nearest gauges either side')
    .argument('[sizes...]', 'such as "No. 29 drill" or "13/64 ± 1/64 in"; else lines on stdin')
    .option('--json', 'one JSON object a line')
    .addOption(
      new Option('--swg <system>', 'what a bare SWG means').choices(['imperial', 'us-steel']),
    )
    .action(async (sizes: string[], options) => {
      const { size } = await import('./commands/size.ts');
      done(await size(sizes, options, io));
    });

  program
    .command('draft')
    .description('write a new sheet for a kind of unit and its features, or sheets from a list')
    .option('-k, --kind <kind>', 'kind of unit, such as carburetor')
    .option('--maker <name>', 'who made the unit')
    .option('--model <name>', 'the model')
    .option('--features <names>', 'the features, parted by commas')
    .option('--date <date>', 'date of the sheet, year-month-day; today if not given')
    .option('-o, --out <path>', 'where to write; - is standard output')
    .option('--based-on <sheet>', 'a variant of that sheet, by path or by name; needs --out')
    .option('--new-kind <name>', 'a kind of unit of your own, in kinds/')
    .option('--title <words>', 'with --based-on, --new-kind or --club: its title')
    .option('--from <list>', 'a list of units (CSV, XLSX or ODS): a sheet for each')
    .option('--mapping <file>', 'with --from: how the list is read; else <list>.mapping.yaml')
    .option('-y, --yes', 'with --from: go on with the mapping that is proposed')
    .option('--dry-run', 'with --from: say what would be written, and write nothing')
    .option('--club <folder>', 'an example project folder, with a workflow for a forge')
    .option('--plain', 'with --club: an edition and example sheets, and nothing for a forge')
    .option('--program <address>', 'with --club: a git address or packed file of the program')
    .addHelpText(
      'after',
      `
Without --from it asks on a terminal for what is missing. With --from the first call writes
<list>.mapping.yaml beside the list, with what each column was taken for, and stops; the second
writes the sheets and lists every cell that could not be read. Sheets that are there are left
alone: where the list says otherwise, it is told. Ends with 1 where a cell was left out.`,
    )
    .action(async (options) => {
      const { draft } = await import('./commands/draft.ts');
      done(await draft(options, io));
    });

  program
    .command('desk')
    .description('write sheets in a browser, with findings, card and order of work beside the text')
    .addArgument(new Argument('[folder]', 'a project folder; without one, the one around you'))
    .option('--port <number>', 'port on this machine; any that is free if not given')
    .option('--no-open', 'print the address and open no browser')
    .action(async (folder: string | undefined, options) => {
      const { desk } = await import('./commands/desk.ts');
      done(await desk(folder, options, io));
    });

  program
    .command('language-server')
    .description('answer a text editor: findings, completion, hover and cures while one writes')
    .option('--stdio', 'on standard input and output, as it always is')
    .action(async () => {
      const { languageServer } = await import('./commands/language-server.ts');
      done(await languageServer(io));
    });

  printing(
    program
      .command('record')
      .description('judge the readings of a bench record; of a sheet, write a blank one')
      .argument('<file>', 'a record (.yaml), or a sheet by path or by name')
      .option('--simple', 'judge by the readings alone, without the uncertainty of the gauges')
      .option('--json', 'one JSON object')
      .option('--card', 'print the bench card filled in')
      .option('--serial <number>', 'of a blank record: the number of the unit')
      .option(
        '--add-to <source>',
        'count its readings as left among those of a source of the sheet',
      ),
  ).action(async (file: string, options) => {
    const { record } = await import('./commands/record.ts');
    done(await record(file, options, io));
  });

  program
    .command('reread')
    .description('a blank for reading a source a second time; of one filled in, what differs')
    .argument('<file>', 'a sheet by path or by name, or a second reading (.yaml)')
    .option('-s, --source <name>', 'only this source of the sheet')
    .option('--page <text>', 'only this page of it')
    .option('--by <name>', 'who reads; with --settle, who settles')
    .addOption(
      new Option('--order <order>', "the paper's order, or shuffled within each page").choices([
        'paper',
        'shuffled',
      ]),
    )
    .option('-o, --out <path>', 'where to write the blank; - is standard output')
    .option('--json', 'the comparison as one JSON object')
    .option('--settle <setting=who>', 'who is right: first (the sheet), second, or both wrong')
    .option('--value <figure>', 'what the page does print, where both are wrong')
    .option('--why <text>', 'why it is settled so')
    .action(async (file: string, options) => {
      const { reread } = await import('./commands/reread.ts');
      done(await reread(file, options, io));
    });

  program
    .command('readings')
    .description(
      'how far the second reading of each sheet has come, and how many errors are probably left',
    )
    .option('--json', 'one JSON object')
    .action(async (options) => {
      const { readings } = await import('./commands/readings.ts');
      done(await readings(options, io));
    });

  program
    .command('order')
    .description('draw what must come before what on a sheet, and what disturbs what')
    .argument('<sheet>', 'a sheet, by path or by name')
    .option('-o, --out <path>', 'where to write the picture (SVG); - is standard output')
    .option('--text', 'a plain list in place of the picture, with the pairs that are free')
    .action(async (sheet: string, options) => {
      const { order } = await import('./commands/order.ts');
      done(await order(sheet, options, io));
    });

  program
    .command('draw')
    .description('the line drawings of a sheet as SVG files, made from its sizes')
    .argument('<sheet>', 'a sheet, by path or by name')
    .argument('[operation]', 'one operation of it, by the name of its heading')
    .option('-o, --out <folder>', 'where to write them; print/ of the project without it')
    .action(async (sheet: string, operation: string | undefined, options) => {
      const { draw } = await import('./commands/draw.ts');
      done(await draw(sheet, operation, options, io));
    });

  program
    .command('compare')
    .description('what one edition says otherwise than another')
    .argument('<old>', 'a project folder, a file of `export --format json`, or a git revision')
    .argument('[new]', 'the same; without one, the sheets of this project as they stand')
    .addOption(
      new Option('-f, --format <format>', 'how it is written')
        .choices(['text', 'json'])
        .default('text'),
    )
    .option(
      '--slip',
      'print what matters at the bench on one leaf, to fold into copies already sold',
    )
    .addOption(paperOption('paper of the leaf'))
    .option('-o, --out <path>', 'where to write the leaf; - is standard output')
    .option('--browser <path>', 'browser to print with, or `packaged` for the built-in one')
    .action(async (before: string, after: string | undefined, options) => {
      const { compare } = await import('./commands/compare.ts');
      done(await compare(before, after, options, io));
    });

  program
    .command('export')
    .description('every setting with its exact value, limits, equivalents and source')
    .addOption(
      new Option('-f, --format <format>', 'a table, a data file, or both with table metadata')
        .choices(['csv', 'json', 'package'])
        .default('csv'),
    )
    .option('-o, --out <path>', 'where to write; standard output without one')
    .action(async (options) => {
      const { exportSettings } = await import('./commands/export.ts');
      done(await exportSettings(options, io));
    });

  program
    .command('curve')
    .description('the tables of a sheet, and what one says between its rows')
    .argument('<sheet>', 'a sheet, by path or by name')
    .argument('[setting]', 'the table; all of the sheet, if left out')
    .option('--at <station>', 'what the table says there, by straight lines between its rows')
    .option('--json', 'one JSON object in place of the table')
    .action(async (sheet: string, setting: string | undefined, options) => {
      const { curve } = await import('./commands/curve.ts');
      done(await curve(sheet, setting, options, io));
    });

  program
    .command('work')
    .description('work what follows from the figures of a sheet, with formulas and limits')
    .argument('<sheet>', 'a sheet, by path or by name')
    .option('--full', 'also sources, assumptions and range, and what is missing where')
    .option('--json', 'one JSON object in place of the table')
    .option(
      '--like <other>',
      'compare the throttles of two sheets: areas at one gap, gaps of one area',
    )
    .action(async (sheet: string, options) => {
      if (options.like !== undefined) {
        const { like } = await import('./like.ts');
        return done(await like(sheet, options.like, options, io));
      }
      const { work } = await import('./commands/work.ts');
      done(await work(sheet, options, io));
    });

  program
    .command('measured')
    .description('sum the readings of measured units: mean, spread, and what they prove')
    .argument('<sheet>', 'a sheet, by path or by name')
    .argument('[setting]', 'one setting; without one, all that were measured')
    .option('--json', 'one JSON object in place of the text')
    .action(async (sheet: string, setting: string | undefined, options) => {
      const { measured } = await import('./commands/measured.ts');
      done(await measured(sheet, setting, options, io));
    });

  program
    .command('sources')
    .description('what each source says of each setting, with the disagreements marked')
    .argument('[sheet]', 'a sheet, by path or by name; without one, the sheets of this project')
    .addOption(
      new Option('-f, --format <format>', 'a table to read, or one line a statement')
        .choices(['text', 'csv'])
        .default('text'),
    )
    .option('-o, --out <path>', 'where to write; - is standard output')
    .option('-d, --differing', 'only settings that sources differ on')
    .option('-a, --all', 'also settings that one source alone speaks to')
    .option('--pdf', 'print the table of one sheet, with the rulings')
    .addOption(paperOption('paper to print on'))
    .option('--browser <path>', 'browser to print with, or `packaged` for the built-in one')
    .action(async (sheet: string | undefined, options) => {
      const { sources } = await import('./commands/sources.ts');
      done(await sources(sheet, options, io));
    });

  program
    .command('find')
    .description('where the sheets say a size, in any notation and nearly, or words')
    .argument('<what...>', 'such as 13/64, "No. 6 drill", unloader, "m48 p. 31" or T71-104')
    .option(
      '--within <size>',
      'how far off a size may be, such as "0.002 in" or "2 %"; 1 %, of a length at most 0.001 in',
    )
    .option('--json', 'one JSON object')
    .action(async (what: string[], options) => {
      const { find } = await import('./commands/find.ts');
      done(await find(what, options, io));
    });

  program
    .command('kind')
    .description('what a kind of unit knows: settings, operations, parts, hazards, features')
    .argument('[kind]', 'a kind of unit; without one, all are listed')
    .argument('[name]', 'all of one entry, by any of its names, such as float-level')
    .option('--json', 'one JSON object')
    .action(async (name: string | undefined, entry: string | undefined, options) => {
      const { kind } = await import('./commands/kind.ts');
      done(await kind(name, entry, options, io));
    });

  program
    .command('schema')
    .description('schemas for editors, with the names of this project in them')
    .option('-o, --out <folder>', 'where to write them; schemas/ of the project without it')
    .action(async (options) => {
      const { schema } = await import('./commands/schema.ts');
      done(await schema(options, io));
    });

  program
    .command('completion')
    .description('the script that teaches a shell the commands, their options and the sheets')
    .addArgument(new Argument('<shell>', 'the shell').choices(shells))
    .action(async (shell: Shell) => {
      const { completion } = await import('./completion.ts');
      io.stdout.write(completion(shell, program));
      done(0);
    });

  program
    .command('explain')
    .description('what a finding means, with a wrong and a right example')
    .argument('[name]', 'name of a finding; without one, all are listed')
    .action(async (name: string | undefined) => {
      const { explain } = await import('./commands/explain.ts');
      done(await explain(name, io));
    });

  for (const command of program.commands)
    command.addHelpText('after', examplesText(examples[command.name()] ?? []));
  return program;
}

function examplesText(calls: readonly (readonly [call: string, does: string])[]): string {
  const column = Math.max(...calls.map(([call]) => call.length));
  const lines = calls.map(([call, does]) => `  gaugeleaf ${call.padEnd(column)}  ${does}`);
  return `\nFor example:\n${lines.join('\n')}`;
}
