using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

public enum FlatteningMethod
{
    /// <summary>Developable within the tolerances: laid flat by its rulings, without strain.</summary>
    ByRulings,

    /// <summary>Not developable: the flat from which an elastic sheet comes onto the surface with least strain.</summary>
    ByLeastStrain,
}

/// <summary>A panel laid flat, seen from the outer side: the lower edge's chord on the x axis from (0, 0), the upper edge above it.</summary>
/// <param name="Map">Where any point of the surface comes to lie.</param>
public sealed record FlatPanel(
    SurfacePatch Patch,
    DevelopmentVerdict Verdict,
    FlatteningMethod Method,
    IFlatMap Map,
    FlatBorder Border,
    StrainField Strain,
    double SurfaceAreaMm2,
    FlatAccuracy Accuracy
)
{
    public ImmutableArray<Vec2> Outline => Border.Outline;

    public EdgeLength LowerEdge => Border.Lower;

    public EdgeLength UpperEdge => Border.Upper;

    public StrainSample Worst => Strain.Worst;
}

/// <summary>The border of a panel laid flat.</summary>
/// <param name="Outline">Counter-clockwise, first point not repeated, chords within the outline tolerance of their curves.</param>
public sealed record FlatBorder(ImmutableArray<Vec2> Outline, EdgeLength Lower, EdgeLength Upper);

/// <summary>How good a flat is.</summary>
/// <param name="PositionMm">
/// By least strain: the most that any point of the flat moved when the spans were doubled, which is several times the error that is
/// left. By rulings: the worst sampled strain carried over half the panel's diagonal.
/// </param>
/// <param name="Strain">The change of the largest strain when the spans were doubled; by rulings the largest strain itself.</param>
/// <param name="Settled">False where the search did not come to rest: the flat is then not to be used.</param>
public readonly record struct FlatAccuracy(double PositionMm, double Strain, bool Settled);

/// <summary>Length of an edge on the surface and of its image in the flat, mm.</summary>
public readonly record struct EdgeLength(double SurfaceMm, double FlatMm);

/// <summary>Whether a panel is developable, and how far from it.</summary>
/// <param name="Departure">How far the developable between the same two edges lies from the surface, mm, and where; infinite where there is none.</param>
/// <param name="Section">Of the surface itself.</param>
/// <param name="GaussTurnDegrees">Gauss curvature summed over the panel: nought on a developable.</param>
public sealed record DevelopmentVerdict(
    bool Developable,
    RulingFit Rulings,
    Departure Departure,
    SectionWarp Section,
    double GaussTurnDegrees,
    DevelopmentTolerances Tolerances
)
{
    /// <summary>A developable hangs between the two edges, though not where the surface is.</summary>
    public bool AnotherDevelopableFitsTheEdges =>
        !Developable && Rulings.FoundShare >= 1 && Rulings.WarpDegrees <= Tolerances.WarpDegrees;
}

/// <summary>How well straight lines between the two edges serve as rulings.</summary>
/// <param name="FoundShare">The part of the rulings that satisfy the condition between the two edges, 0 to 1.</param>
/// <param name="WarpDegrees">Greatest turn of the ruled surface's normal along one ruling.</param>
public readonly record struct RulingFit(double FoundShare, double WarpDegrees);

/// <summary>How far one surface lies from another at its worst, mm, and where.</summary>
public readonly record struct Departure(double Mm, Uv At);

/// <summary>Greatest turn of a surface's normal from the lower edge to the upper along a section u = constant, and that u.</summary>
public readonly record struct SectionWarp(double Degrees, double AtU);

/// <summary>When a panel counts as developable. The defaults are proposals: what a sheet of plywood takes without notice.</summary>
/// <param name="WarpDegrees">The most that the normal may turn along a ruling.</param>
/// <param name="DepartureMm">The most that the developable may lie from the surface.</param>
public sealed record DevelopmentTolerances(double WarpDegrees = 0.2, double DepartureMm = 0.5);
