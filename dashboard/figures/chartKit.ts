/** The parts of Chart.js that the figures use; loaded only when a figure is drawn. */
import {
  BarController,
  BarElement,
  Chart,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  ScatterController,
} from 'chart.js';

Chart.register(
  BarController,
  BarElement,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  ScatterController,
);

export { Chart };
