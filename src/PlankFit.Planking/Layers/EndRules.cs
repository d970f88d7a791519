using System.Collections.Immutable;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Layers;

public enum EndCut
{
    Fit,
    LeftLong,
}

/// <summary>What is done with a plank's end at one edge.</summary>
/// <param name="ByMm">For an end left long: how far past the edge, square to it, on the surface.</param>
/// <param name="AllowanceMm">For an end that is fit: extra length to scribe away; null where the job names none.</param>
public sealed record EndRule(EndCut Cut, double ByMm, double? AllowanceMm)
{
    public static readonly EndRule Fit = new(EndCut.Fit, 0, null);

    public static EndRule LeftLong(double byMm) => new(EndCut.LeftLong, byMm, null);
}

/// <summary>The rules for the four edges, and stretches of the hull where it is done otherwise.</summary>
public sealed record EndRules(
    EndRule Lower,
    EndRule Upper,
    EndRule Transom,
    EndRule Stem,
    ImmutableArray<EndZone> Zones
)
{
    /// <summary>Of a bottom: fit at the keel, the others left long by 25 mm.</summary>
    public static readonly EndRules Default = new(
        EndRule.Fit,
        EndRule.LeftLong(25),
        EndRule.LeftLong(25),
        EndRule.LeftLong(25),
        []
    );

    /// <summary>Of a panel without a keel: left long by 25 mm all round, to be trimmed where the next panel's planks lie.</summary>
    public static readonly EndRules LeftLong = Default with { Lower = EndRule.LeftLong(25) };

    /// <summary>Where the keel runs out forward; null where planks meet it all along.</summary>
    public KeelRunOut? RunOut { get; init; }

    /// <summary>Whether a zone of the job says what is done at this edge at x.</summary>
    public bool Zoned(PanelEdge edge, double xMm) =>
        Zones.Any(z => xMm >= z.FromMm && xMm <= z.ToMm && z.Rule(edge) is not null);

    /// <summary>The rule for an end whose midpoint lies at x, mm.</summary>
    public EndRule For(PanelEdge edge, double xMm)
    {
        foreach (EndZone zone in Zones)
        {
            if (xMm >= zone.FromMm && xMm <= zone.ToMm && zone.Rule(edge) is { } rule)
            {
                return rule;
            }
        }

        return edge switch
        {
            PanelEdge.Lower => Lower,
            PanelEdge.Upper => Upper,
            PanelEdge.Transom => Transom,
            _ => Stem,
        };
    }
}

/// <summary>
/// Forward of x, mm, the keel layer that a layer of planks meets has faded: a plank whose inner end lies there is left long at the keel and fit at the chine,
/// wherever its outer end lies. A zone of the job goes before it.
/// </summary>
public sealed record KeelRunOut(double XMm, double ByMm);

/// <summary>A stretch from x to x, mm, where some edges have rules of their own; null where the general rule holds.</summary>
public sealed record EndZone(
    double FromMm,
    double ToMm,
    EndRule? Lower,
    EndRule? Upper,
    EndRule? Transom,
    EndRule? Stem
)
{
    public EndRule? Rule(PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower => Lower,
            PanelEdge.Upper => Upper,
            PanelEdge.Transom => Transom,
            _ => Stem,
        };
}
