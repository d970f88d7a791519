using System.Collections.Immutable;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Timber;

/// <summary>Bend, weight and movement of every plank of a bottom whose wood is named.</summary>
internal static class TimberPlanner
{
    /// <summary>Of wood in the workshop where the job does not say, percent: what the table's figures are at.</summary>
    public const double UsualMoisturePercent = 12;

    public static TimberPlan Of(TimberSpec spec, Planked planked, CancellationToken stop)
    {
        ImmutableArray<LayerTimber>.Builder layers = ImmutableArray.CreateBuilder<LayerTimber>();
        foreach (PlankLayerPlan layer in planked.PlankLayers)
        {
            if (spec.Of(layer.Planks) is { } species)
            {
                layers.Add(Of(planked.Job, spec, layer, species, stop));
            }
        }

        ImmutableArray<LayerTimber> all = layers.ToImmutable();
        return new(spec, all, [.. TimberFindings.Of(planked, spec, all)])
        {
            Whole =
                all.Length == planked.PlankLayers.Count()
                    ? Weight.Sum(all.Select(l => l.Both))
                    : null,
        };
    }

    private static LayerTimber Of(
        PlankingJob job,
        TimberSpec spec,
        PlankLayerPlan layer,
        Species species,
        CancellationToken stop
    )
    {
        var judge = BendJudge.Of(job, layer.Planks);
        double? density = species.KgPerCubicMetre(spec.Workshop?.Percent ?? UsualMoisturePercent);
        PlankBody[] starboard = Bodies(layer.Starboard, stop);
        // Where port is starboard's mirror image its planks need no reckoning of their own.
        PlankBody[] port = layer.PortApart is null
            ? [.. starboard.Select(b => b with { Centre = b.Centre.MirroredInY() })]
            : Bodies(layer.Port, stop);
        PlankTimber[] ofStarboard = [.. layer.Starboard.Select((p, i) => One(p, starboard[i]))];
        PlankTimber[] ofPort = [.. layer.Port.Select((p, i) => One(p, port[i]))];
        return new(
            layer.Number,
            layer.Planks.Name,
            species,
            judge,
            density,
            [.. ofStarboard, .. ofPort],
            (starboard.Sum(b => b.AreaMm2) / layer.AreaMm2) - 1
        )
        {
            Starboard = Weight.Sum(ofStarboard.Select(p => p.Weight)),
            Port = Weight.Sum(ofPort.Select(p => p.Weight)),
            Both = Weight.Sum(ofStarboard.Concat(ofPort).Select(p => p.Weight)),
            Movement = Run(spec, layer, species),
        };

        PlankTimber One(Plank plank, PlankBody body) =>
            Plank(spec, layer.Planks, species, judge, density, plank, body);
    }

    private static PlankBody[] Bodies(ImmutableArray<Plank> planks, CancellationToken stop)
    {
        var bodies = new PlankBody[planks.Length];
        var options = new ParallelOptions { CancellationToken = stop };
        Parallel.For(0, planks.Length, options, i => bodies[i] = PlankBody.Of(planks[i]));
        return bodies;
    }

    private static PlankTimber Plank(
        TimberSpec spec,
        PlankLayerSpec layer,
        Species species,
        BendJudge judge,
        double? density,
        Plank plank,
        PlankBody body
    )
    {
        Bend bend = plank.Bend;
        double t = layer.ThicknessMm,
            curvature = bend.StrainPercent / 100 * 2 / t,
            edge = FlatStrain.AtEdges(bend.MostGaussPerMm2, plank.WidestMm),
            twist = bend.TwistDegreesPerMetre / 1000 * Math.PI / 180;
        int? laminations =
            bend.Way is BendWay.LaminateThinner or BendWay.SoakOrSteam && curvature > 0
                ? judge.Laminations(1 / curvature, edge, t)
                : null;
        return new(
            plank.Id,
            new(
                bend.Way,
                judge.Index(bend.GrainStrainPercent / 100),
                laminations,
                FlatStrain.WidestMm(bend.MostGaussPerMm2, judge.EdgeStrainPercent / 100),
                EdgeSet.Of(plank, t, layer.WidthMm, judge),
                species.Modulus is { } e
                    ? Springback.ClampNewtons(
                        e.Value,
                        plank.WidestMm,
                        t,
                        curvature,
                        twist,
                        spec.ClampSpacingMm
                    )
                    : null
            ),
            body.AreaMm2,
            density is { } kg ? new(body.AreaMm2 * t * kg * 1e-9, body.Centre, body.ErrorMm) : null,
            Movement(spec, species, plank.WidestMm, t)
        );
    }

    private static PlankMovement? Movement(
        TimberSpec spec,
        Species species,
        double widthMm,
        double thicknessMm
    )
    {
        if (
            spec.Workshop is not { } from
            || spec.Service is not { } to
            || species.Movement(spec.Grain) is not { } across
        )
        {
            return null;
        }

        // Through the thickness the other of the two directions lies; what plywood does there is not known.
        Sourced? through =
            species.Kind == WoodKind.Plywood
                ? null
                : species.Movement(spec.Grain == Grain.Flat ? Grain.Quarter : Grain.Flat);
        return new(
            Moisture.ChangeMm(widthMm, across.Value, from.Percent, to.Percent),
            through is null
                ? null
                : Moisture.ChangeMm(thicknessMm, through.Value, from.Percent, to.Percent)
        );
    }

    private static RunMovement? Run(TimberSpec spec, PlankLayerPlan layer, Species species)
    {
        if (
            spec.Workshop is not { } from
            || spec.Service is not { } to
            || species.Movement(spec.Grain) is not { } across
        )
        {
            return null;
        }

        double width = layer.Starboard.Sum(p => p.WidestMm);
        return new(
            layer.Starboard.Length,
            width,
            Moisture.ChangeMm(width, across.Value, from.Percent, to.Percent),
            across,
            from.Percent,
            to.Percent
        );
    }
}
