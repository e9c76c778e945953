// Preloaded before what is measured: on exit it writes what the process took to the file that BENCH_OUT names.
const { writeFileSync } = require('node:fs');
process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  const taken = {
    wall: performance.now(),
    cpu: (user + system) / 1000,
    memory: process.resourceUsage().maxRSS / 1024,
  };
  writeFileSync(process.env.BENCH_OUT ?? 'bench.json', JSON.stringify(taken));
});
