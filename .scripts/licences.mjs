// The licences of the packages that are bundled into the program, with their texts.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A file that holds a licence, or what it asks to be passed on with it. */
const LICENCE = /^(?:licen[cs]e|copying|notice)(?:[.-].*)?$/i;

/** The folder of the package that a bundled file is of; undefined for one of our own.
 * @param {string} file */
const packageOf = (file) => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file)?.[0];

const RULE = '-'.repeat(78);

/**
 * One text for all packages that the files given are of: name, version, licence, and each licence text as the package has
 * it. Throws for a package that names no licence or has no text of it.
 * @param {readonly string[]} files from the top of the repository
 */
export const licencesOf = (files) => {
  const folders = [...new Set(files.flatMap((file) => packageOf(file) ?? []))].sort();
  const parts = folders.map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const texts = readdirSync(folder)
      .filter((one) => LICENCE.test(one))
      .sort();
    if (typeof license !== 'string' || texts.length === 0)
      throw new Error(`${name} is bundled, and its licence ${license ?? ''} stands in no file of the package`);
    const text = texts.map((one) => readFileSync(join(folder, one), 'utf8').trim()).join('\n\n');
    return `${RULE}\n${name} ${version}\n${license}\n${RULE}\n\n${text}\n`;
  });
  return `Packages that are a part of this program, each under its own licence.\n\n${parts.join('\n')}`;
};
