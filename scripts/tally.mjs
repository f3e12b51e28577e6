/** Tests in a Vitest JSON report. A file that could not be loaded at all counts as one failure. */
export function countVitest({ testResults }) {
  const count = { passed: 0, failed: 0 };
  for (const file of testResults) {
    const failed = file.assertionResults.filter((test) => test.status === 'failed').length;
    count.passed += file.assertionResults.filter((test) => test.status === 'passed').length;
    count.failed += file.status === 'failed' ? Math.max(1, failed) : failed;
  }
  return count;
}

/** Tests in a Playwright JSON report; one that passed only when tried again has failed. */
export function countPlaywright({ stats, errors }) {
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length };
}
