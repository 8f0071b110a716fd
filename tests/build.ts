/** Builds the service and the dashboard once before the suite: journeys and page tests run the real thing. */
import { execFileSync } from 'node:child_process';

export default function build(): void {
  execFileSync('npm', ['run', '-s', 'build'], { stdio: ['ignore', 'ignore', 'inherit'] });
}
