/** A command whose refusals are sentences of the catalogue: the library that reads commands speaks English alone. */
import { nearest } from '@shedbook/core';
import type { CliWords } from '@shedbook/words';
import { Command, type Option } from 'commander';

/** What is wrong with a command as it was typed. */
type UsageWords = CliWords['usage'];

/** Names of the options that a command takes, those of the commands around it among them. */
function optionsOf(command: Command): readonly string[] {
  const own = command.options.flatMap(({ long }) => (long ? [long] : []));
  return command.parent ? [...own, ...optionsOf(command.parent)] : own;
}

/** A command; its subcommands speak as it does. */
export class SpokenCommand extends Command {
  readonly #words: UsageWords;

  constructor(name: string | undefined, words: UsageWords) {
    super(name);
    this.#words = words;
  }

  override createCommand(name?: string): Command {
    return new SpokenCommand(name, this.#words);
  }

  /** Called for an option that the command does not have. @throws CommanderError always */
  unknownOption(option: string): never {
    const near = nearest(option, optionsOf(this));
    const { option: none, optionNear } = this.#words;
    return this.error(near ? optionNear({ option, near }) : none({ option }), { code: 'unknownOption' });
  }

  /** Called for a command that there is not. @throws CommanderError always */
  unknownCommand(): never {
    const [command = ''] = this.args;
    const near = nearest(
      command,
      this.commands.map((each) => each.name()),
    );
    const { command: none, commandNear } = this.#words;
    return this.error(near ? commandNear({ command, near }) : none({ command }), { code: 'unknownCommand' });
  }

  /** Called where an argument is not there. @throws CommanderError always */
  missingArgument(argument: string): never {
    return this.error(this.#words.argument({ argument }), { code: 'missingArgument' });
  }

  /** Called where the value of an option is not there. @throws CommanderError always */
  optionMissingArgument({ flags }: Option): never {
    return this.error(this.#words.value({ option: flags }), { code: 'optionMissingArgument' });
  }

  /** Called where an option that must be there is not. @throws CommanderError always */
  missingMandatoryOptionValue({ flags }: Option): never {
    return this.error(this.#words.required({ option: flags }), { code: 'missingMandatoryOptionValue' });
  }

  /** Called where more arguments are there than a command takes. @throws CommanderError always */
  _excessArguments(found: readonly string[]): never {
    const expected = this.registeredArguments.length;
    return this.error(this.#words.tooMany({ found: found.length, expected }), { code: 'excessArguments' });
  }
}
