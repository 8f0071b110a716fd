/** Orders that have neither come nor been followed by a release of the same friend. */
import type { Order, Release } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';

export const onTheWay = (
  orders: readonly Recorded<Order>[],
  releases: readonly Recorded<Release>[],
): Recorded<Order>[] =>
  orders.filter(
    ({ data: order }) =>
      !order.arrivedAt &&
      !releases.some(
        ({ data }) => data.enemy === order.enemy && Date.parse(data.time) > Date.parse(order.orderedAt),
      ),
  );
