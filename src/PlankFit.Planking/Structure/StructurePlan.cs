using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Planking.Timber;

namespace PlankFit.Planking.Structure;

/// <summary>What the skins come to: stiffness beside the same mass of wood, mass, and what all of it is made of. A comparison, never an approval.</summary>
/// <param name="Stations">Those of least deadrise first: they govern.</param>
/// <param name="Layers">From the inside out.</param>
public sealed record StructurePlan(
    StructureSpec Spec,
    ImmutableArray<StationStiffness> Stations,
    ImmutableArray<LayerMass> Layers,
    ImmutableArray<BillRow> Bill,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>Of all layers; null where one is not known.</summary>
    public Weight? Whole => Weight.Sum(Layers.Select(l => l.Mass));

    /// <summary>Where each constant comes from.</summary>
    public ImmutableArray<ConstantFrom> Constants { get; init; } = [];

    /// <summary>The station of least deadrise; null where no layer's stiffness is known.</summary>
    public StationStiffness? Governing => Stations.FirstOrDefault();
}

/// <summary>The stack at one station, with the angles that planks have there.</summary>
/// <param name="Deadrise">Of the straight line from keel to chine, degrees from level.</param>
/// <param name="Angles">Of each layer of planks at mid-girth, degrees from the line along the hull towards the chine, from the inside out.</param>
/// <param name="SpanMm">Widest between stringers, keel and chine; null where neither job nor what lies behind says.</param>
/// <param name="Lays">The stack as planned first, then those that it is set beside.</param>
public sealed record StationStiffness(
    string Station,
    double XMm,
    double Deadrise,
    ImmutableArray<double> Angles,
    double? SpanMm,
    ImmutableArray<LaidUp> Lays
)
{
    public LaidUp AsPlanned => Lays[0];

    /// <summary>The boards of each layer of planks by themselves, from the inside out.</summary>
    public ImmutableArray<BoardStrip> Boards { get; init; } = [];
}

/// <summary>One board of a layer, its grain at the angle that planks have at a station.</summary>
public sealed record BoardStrip(string Layer, Ply Ply)
{
    /// <summary>Along its grain, MPa.</summary>
    public double AlongMPa => Ply.Material.E1;

    /// <summary>Along the hull, by its own axes with the shear of its kind of wood, MPa.</summary>
    public double ByAxesMPa => Ply.Material.ModulusAt(Ply.Degrees);

    /// <summary>The same by Hankinson's rule, which asks for no shear.</summary>
    public double ByHankinsonMPa =>
        GrainAngle.Hankinson(Ply.Material.E1, Ply.Material.E2, Ply.Degrees);
}

/// <summary>A stack with a name.</summary>
public sealed record LaidUp(string Name, Laminate Laminate)
{
    /// <summary>Between the stringers under the job's pressure, held at both so that it cannot turn, mm; null where there is no span or no pressure.</summary>
    public double? DeflectionMm { get; init; }
}

/// <summary>A layer's mass on both sides and where its centre lies.</summary>
/// <param name="Of">How it is reckoned.</param>
/// <param name="Mass">Null where a density is not known.</param>
public sealed record LayerMass(string Layer, string Of, double AreaMm2, Weight? Mass);

/// <summary>One row of the bill of materials.</summary>
/// <param name="Amount">In <paramref name="Unit"/>: m², kg, a count.</param>
/// <param name="Source">Where amount and rate come from.</param>
public sealed record BillRow(
    string Kind,
    string Item,
    string For,
    double Amount,
    string Unit,
    string Source
)
{
    /// <summary>Null where no price is given.</summary>
    public double? Cost { get; init; }
}

/// <summary>A constant with its source.</summary>
public sealed record ConstantFrom(string What, string Value, string Source);
