package coilwright.network;

import java.util.List;

/**
 * A voltmeter between two nodes while the network is fed: it shows v<sub>from</sub> − v<sub>to</sub>.
 *
 * @param feeds the supplies connected during the reading; empty for the network's own sources alone
 * @param from node the meter's positive probe touches
 * @param to node its other probe touches
 */
public record Reading(List<Feed> feeds, int from, int to) {
    /**
     * Copies the list.
     *
     * @param feeds the supplies connected during the reading; empty for the network's own sources alone
     * @param from node the meter's positive probe touches
     * @param to node its other probe touches
     */
    public Reading {
        feeds = List.copyOf(feeds);
    }
}
