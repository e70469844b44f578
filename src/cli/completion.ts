import type { Command } from 'commander';
import type { Shell } from './formats.ts';

/** One command as a shell has to know it. */
interface Told {
  readonly name: string;
  readonly words: string;
  readonly options: readonly Flag[];
  /** Whether it takes sheets, by name or path. */
  readonly sheets: boolean;
}

interface Flag {
  readonly long: string;
  readonly short: string | null;
  readonly words: string;
  /** Null for none that can be listed. */
  readonly choices: readonly string[] | null;
  readonly takes: boolean;
}

/** The script that teaches a shell the commands, their options and the sheets of the folder one is in. */
export function completion(shell: Shell, program: Command): string {
  const commands = program.commands.map(toldOf);
  const write = { bash, zsh, fish }[shell];
  return `${write(program.name(), commands).trim()}\n`;
}

function toldOf(command: Command): Told {
  const flags = command.options.map(
    ({ long, short, description, argChoices, required, optional }): Flag => ({
      long: long ?? '',
      short: short ?? null,
      words: description,
      choices: argChoices ?? null,
      takes: required || optional,
    }),
  );
  return {
    name: command.name(),
    words: command.description(),
    options: [
      ...flags,
      { long: '--help', short: '-h', words: 'print this help', choices: null, takes: false },
    ],
    sheets: command.registeredArguments.some((argument) =>
      /^(sheets?|paths|file)$/.test(argument.name()),
    ),
  };
}

/** Lists the sheets of the folder, by name. */
const listSheets = 'ls sheets 2>/dev/null | sed -n "s/\\.md\\$//p"';

function bash(name: string, commands: readonly Told[]): string {
  const cases = commands.map(({ name: command, options, sheets }) => {
    const flags = options.flatMap(({ long, short }) => (short === null ? [long] : [long, short]));
    const more = sheets ? ` $(${listSheets})` : '';
    return `    ${command}) words="${flags.join(' ')}${more}" ;;`;
  });
  const choices = commands.flatMap(({ name: command, options }) =>
    options.flatMap(({ long, short, choices: each }) =>
      each === null
        ? []
        : [long, ...(short === null ? [] : [short])].map(
            (flag) => `    "${command} ${flag}") words="${each.join(' ')}" ;;`,
          ),
    ),
  );
  return `# bash: eval "$(${name} completion bash)"
_${name}() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} command=\${COMP_WORDS[1]} words=
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${commands.map((each) => each.name).join(' ')} help" -- "$word"))
    return
  fi
  case $command in
${cases.join('\n')}
  esac
  case "$command $before" in
${choices.join('\n')}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$word") $(compgen -f -- "$word"))
}
complete -o filenames -F _${name} ${name}`;
}

function zsh(name: string, commands: readonly Told[]): string {
  const list = commands.map(({ name: command, words }) => `    ${quoted(`${command}:${words}`)}`);
  const cases = commands.map(({ name: command, options, sheets }) => {
    const flags = options.flatMap(({ long, short, words, choices, takes }) =>
      [long, ...(short === null ? [] : [short])].map((flag) => {
        const value =
          choices === null ? (takes ? ':value:_files' : '') : `:value:(${choices.join(' ')})`;
        return `      ${quoted(`${flag}[${words.replace(/[[\]:]/g, ' ')}]${value}`)}`;
      }),
    );
    const rest = sheets ? `'*:sheet:_${name}_sheets'` : "'*:file:_files'";
    return `    ${command}) _arguments \\\n${[...flags, `      ${rest}`].join(' \\\n')} ;;`;
  });
  return `#compdef ${name}
# zsh: eval "$(${name} completion zsh)"
_${name}_sheets() {
  compadd -- $(${listSheets})
  _files
}
_${name}() {
  local -a commands=(
${list.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join('\n')}
  esac
}
compdef _${name} ${name}`;
}

function fish(name: string, commands: readonly Told[]): string {
  const lines = [`# fish: ${name} completion fish | source`];
  for (const { name: command, words, options, sheets } of commands) {
    lines.push(`complete -c ${name} -n __fish_use_subcommand -a ${command} -d ${quoted(words)}`);
    const within = `-n '__fish_seen_subcommand_from ${command}'`;
    for (const { long, short, words: says, choices, takes } of options) {
      const flag = `-l ${long.slice(2)}${short === null ? '' : ` -s ${short.slice(1)}`}`;
      const value = choices === null ? (takes ? ' -r' : '') : ` -x -a ${quoted(choices.join(' '))}`;
      lines.push(`complete -c ${name} ${within} ${flag}${value} -d ${quoted(says)}`);
    }
    if (sheets) lines.push(`complete -c ${name} ${within} -a '(${listSheets})'`);
  }
  return lines.join('\n');
}

/** In single quotes, as all three shells read them. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", '’')}'`;
}
