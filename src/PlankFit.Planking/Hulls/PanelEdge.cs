namespace PlankFit.Planking.Hulls;

/// <summary>The edges of a panel; a bottom's lower one is the keel, its upper one the chine.</summary>
public enum PanelEdge
{
    Lower,
    Upper,
    Transom,
    Stem,
}
