using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Timber;

/// <summary>What the timber makes of every plank: bend, weight, movement.</summary>
public sealed record TimberPlan(
    TimberSpec Spec,
    ImmutableArray<LayerTimber> Layers,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>Of all layers, both sides; null where no layer's wood has a density.</summary>
    public Weight? Whole { get; init; }

    private readonly Dictionary<PlankId, PlankTimber> byId = Layers
        .SelectMany(l => l.Planks)
        .ToDictionary(p => p.Id);

    public PlankTimber? Of(PlankId id) => byId.GetValueOrDefault(id);

    public LayerTimber? Of(PlankLayerPlan layer) =>
        Layers.FirstOrDefault(l => l.Layer == layer.Number);
}

/// <summary>One layer of one wood.</summary>
/// <param name="Planks">Starboard, then port, in the order of the layer.</param>
/// <param name="AreaDeparture">By how much the planks' areas, added up, depart from the layer's own area, which was found without them, as a part of it.</param>
public sealed record LayerTimber(
    int Layer,
    string Name,
    Species Species,
    BendJudge Judge,
    double? KgPerCubicMetre,
    ImmutableArray<PlankTimber> Planks,
    double AreaDeparture
)
{
    public Weight? Starboard { get; init; }
    public Weight? Port { get; init; }
    public Weight? Both { get; init; }

    /// <summary>Across the faces of all planks of a side laid edge to edge, between workshop and service; null where the job does not give both.</summary>
    public RunMovement? Movement { get; init; }
}

/// <summary>A weight and where its centre lies, in the hull's axes, mm.</summary>
/// <param name="ErrorMm">How far the centre may be out by the reckoning: two quadratures compared. The wood's own spread is far greater.</param>
public sealed record Weight(double Kg, Vec3 Centre, double ErrorMm)
{
    public static Weight? Sum(IEnumerable<Weight?> parts)
    {
        double kg = 0,
            error = 0;
        Vec3 moment = Vec3.Zero;
        foreach (Weight? part in parts)
        {
            if (part is null)
            {
                return null;
            }

            kg += part.Kg;
            error += part.Kg * part.ErrorMm;
            moment += part.Kg * part.Centre;
        }

        return kg > 0 ? new(kg, moment / kg, error / kg) : null;
    }
}

/// <summary>What the wood makes of one plank.</summary>
/// <param name="AreaMm2">On the layer's mid-thickness surface.</param>
/// <param name="Movement">Across the plank's face and through its thickness, between workshop and service.</param>
public sealed record PlankTimber(
    PlankId Id,
    TimberBend Bend,
    double AreaMm2,
    Weight? Weight,
    PlankMovement? Movement
)
{
    public Side Side => Id.Side;
}

/// <summary>How a plank of its wood takes its bend.</summary>
/// <param name="Way">How it is got to lie.</param>
/// <param name="StrainIndex">The most strain along the grain over what a cold bend is trusted with: 1 is the limit.</param>
/// <param name="Laminations">How many of equal thickness would bend cold; null where one does, or where none does.</param>
/// <param name="WidestMm">The widest plank that may be laid flat on its curvature; null where any width may.</param>
/// <param name="ClampNewtons">Springback a clamp, an estimate; null where the wood's modulus is not known.</param>
public sealed record TimberBend(
    BendWay Way,
    double? StrainIndex,
    int? Laminations,
    double? WidestMm,
    EdgeSet? EdgeSet,
    double? ClampNewtons
);

/// <summary>Swelling positive, mm.</summary>
public sealed record PlankMovement(double AcrossMm, double? ThroughMm);

/// <param name="Planks">How many lie edge to edge.</param>
/// <param name="WidthMm">Their widths added up.</param>
/// <param name="ChangeMm">If nothing held them: swelling positive.</param>
/// <param name="Coefficient">Part of the width for each percent of moisture.</param>
public sealed record RunMovement(
    int Planks,
    double WidthMm,
    double ChangeMm,
    Sourced Coefficient,
    double FromPercent,
    double ToPercent
);
