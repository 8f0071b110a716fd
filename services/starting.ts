/** Parts of the start that stand by themselves: the broker, the nightly copies, ports that are taken. */
import cron from 'node-cron';
import { createBackups } from './backup/backups.ts';
import { copyInOwnProcess } from './backup/ownProcess.ts';
import { startBroker } from './broker/broker.ts';
import type { Clock } from './clock.ts';
import type { Config } from './config.ts';
import { certificateOf, type Doors } from './doors.ts';

/** A copy each night, and one at the start when the machine was off; readings are stored meanwhile. */
export function dailyBackups(config: Config, clock: Clock, onClose: (close: () => unknown) => void) {
  if (config.backups === undefined) return undefined;
  const backups = createBackups({ folder: config.backups, clock, copyTo: copyInOwnProcess(config) });
  const nightly = cron.schedule('17 3 * * *', backups.run);
  onClose(() => nightly.destroy());
  void backups.runIfDue();
  return backups;
}

export const thisMachine = '127.0.0.1';

/** The broker inside the service, behind its doors. */
export async function embeddedBroker(
  config: Config,
  doors: Doors,
  beforeAcknowledge: Parameters<typeof startBroker>[0]['beforeAcknowledge'],
) {
  const { embeddedPort: port = 1883, host = thisMachine } = config.mqtt;
  const certificate = certificateOf(config);
  const tls = certificate && { ...certificate, port: config.tls?.mqttPort ?? 0 };
  const broker = await naming('GLASSTIDE_MQTT_PORT', port, () =>
    startBroker({
      port,
      host: doors.hostFor(host),
      rights: doors.rights,
      tls,
      ...(beforeAcknowledge && { beforeAcknowledge }),
    }),
  );
  doors.access.onChange(broker.review);
  return broker;
}

/** Turns "address in use" into a sentence that names the setting. */
export async function naming<T>(setting: string, port: number, listen: () => Promise<T>): Promise<T> {
  try {
    return await listen();
  } catch (error) {
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    if (!taken) throw error;
    throw new Error(`Port ${port} is taken by another program: set ${setting} to a free port.`, {
      cause: error,
    });
  }
}
