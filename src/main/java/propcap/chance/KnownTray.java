package propcap.chance;

/**
 * What is known of a tray's luck.
 *
 * @param paceAfter how many times the median thermal time of growing on it needs is more than this
 * @param paceBy and no more than this; infinite: nothing is known
 * @param hadOutbreak whether damping-off was seen in it
 */
public record KnownTray(
    KnownShowing showing, double paceAfter, double paceBy, boolean hadOutbreak) {}
