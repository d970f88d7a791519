namespace PlankFit.Planking.Hulls;

/// <summary>The edges of a bottom.</summary>
public enum HullEdge
{
    Keel,
    Chine,
    Transom,
    Stem,
}
