/** What has become of an order: still on its way, or come and not set out yet. */
import type { Order, Release } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';

/** Orders that no release of the same friend has followed. */
export const notSetOut = (
  orders: readonly Recorded<Order>[],
  releases: readonly Recorded<Release>[],
): Recorded<Order>[] =>
  orders.filter(
    ({ data: order }) =>
      !releases.some(
        ({ data }) => data.enemy === order.enemy && Date.parse(data.time) > Date.parse(order.orderedAt),
      ),
  );

/** The same, without those whose parcel has come. */
export const onTheWay = (
  orders: readonly Recorded<Order>[],
  releases: readonly Recorded<Release>[],
): Recorded<Order>[] => notSetOut(orders, releases).filter(({ data }) => !data.arrivedAt);
