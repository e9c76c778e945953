// Makes a fault of the program, no error of the system's: with FAULT_AT=plan where a line is made ready, before anything
// is written; with print where something is printed.

const fault = () => {
  throw new TypeError('a fault as the test wants it');
};

if (process.env.FAULT_AT === 'print') process.stdout.write = fault;
// The last line of a visit is looked for with it.
if (process.env.FAULT_AT === 'plan') Array.prototype.findLastIndex = fault;
