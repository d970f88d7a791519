using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Timber;

/// <summary>What a person should know of the wood before it is bought, sawn and glued.</summary>
internal static class TimberFindings
{
    public static IEnumerable<Finding> Of(
        Planked planked,
        TimberSpec spec,
        IReadOnlyList<LayerTimber> layers
    )
    {
        foreach (PlankLayerPlan layer in planked.PlankLayers)
        {
            if (layers.All(l => l.Layer != layer.Number))
            {
                yield return new(
                    Severity.Warning,
                    $"layer {layer.Planks.Name}",
                    "no species is named for it, in the layer or in [timber]: it has no weight and no movement, and its bend is judged by radius alone"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }

        foreach (Finding finding in Moistures(spec))
        {
            yield return finding;
        }

        foreach (LayerTimber layer in layers)
        {
            foreach (Finding finding in Unknown(spec, layer).Concat(Bent(planked, layer)))
            {
                yield return finding;
            }
        }

        foreach (Species species in layers.Select(l => l.Species).Distinct())
        {
            if (Recalled(species) is { Length: > 0 } recalled)
            {
                yield return new(
                    Severity.Note,
                    species.Title,
                    $"{recalled}: from memory or weakly known; look up or weigh your own, and give it under [[timber.species]], before anything hangs on it"
                );
            }
        }
    }

    private static IEnumerable<Finding> Moistures(TimberSpec spec)
    {
        if (spec.Workshop is null != spec.Service is null)
        {
            yield return new(
                Severity.Note,
                "[timber]",
                "only one of workshop-moisture and service-moisture is given: movement needs both"
            );
        }

        if (spec.Workshop is { Percent: > Moisture.GluePercent } wet)
        {
            yield return new(
                Severity.Warning,
                "[timber]",
                $"workshop-moisture: at {Percent(wet.Percent)} the wood is too wet for epoxy; dry it below {Percent(Moisture.GluePercent)} and meter every board before glue"
            )
            {
                Rank = Rank.Know,
            };
        }

        foreach (
            (string name, MoistureGiven? given) in new[]
            {
                ("workshop-moisture", spec.Workshop),
                ("service-moisture", spec.Service),
            }
        )
        {
            if (given is { Percent: < Moisture.LinearFromPercent or > Moisture.LinearToPercent })
            {
                yield return new(
                    Severity.Warning,
                    "[timber]",
                    $"{name}: {Percent(given.Percent)} lies outside {Percent(Moisture.LinearFromPercent)} to {Percent(Moisture.LinearToPercent)}, where movement follows the moisture in a straight line; take the movement as a rough guide"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }
    }

    private static IEnumerable<Finding> Unknown(TimberSpec spec, LayerTimber layer)
    {
        List<string> missing = [];
        if (layer.KgPerCubicMetre is null)
        {
            missing.Add("density, so there is no weight");
        }

        if (layer.Species.Kind == WoodKind.Solid && layer.Species.BreakingStrain is null)
        {
            missing.Add("strength and stiffness, so its bend is judged as that of any softwood");
        }

        if (
            spec.Workshop is not null
            && spec.Service is not null
            && layer.Species.Movement(spec.Grain) is null
        )
        {
            missing.Add("movement, so the seams' is not reckoned");
        }

        if (missing.Count > 0)
        {
            yield return new(
                Severity.Warning,
                $"layer {layer.Name}",
                $"the table has nothing for {layer.Species.Title} on {string.Join("; on ", missing)}; give it under [[timber.species]]"
            )
            {
                Rank = Rank.Know,
            };
        }
    }

    private static IEnumerable<Finding> Bent(Planked planked, LayerTimber layer)
    {
        double thickness = planked
            .PlankLayers.First(l => l.Number == layer.Layer)
            .Planks.ThicknessMm;
        foreach (
            IGrouping<int, PlankTimber> group in layer
                .Planks.Where(p => p.Side == Side.Starboard && p.Bend.Laminations is not null)
                .GroupBy(p => p.Bend.Laminations!.Value)
        )
        {
            string each = LengthText.FormatExact(
                thickness / group.Key,
                LengthUnits.IsMetric(planked.Job.Units) ? LengthUnit.Millimetre : planked.Job.Units
            );
            yield return new(
                Severity.Note,
                group.First().Id,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{NumberText.Count(group.Count(), "plank")} a side of layer {layer.Name} would bend cold if laminated of {group.Key} layers of {each}"
                )
            );
        }
    }

    private static string Percent(double percent) => NumberText.Trimmed(percent, 1) + " %";

    private static string Recalled(Species s) =>
        string.Join(
            ", ",
            new[]
            {
                ("density", s.Density ?? s.Gravity),
                ("strength", s.Rupture),
                ("stiffness", s.Modulus),
                ("movement", s.MoveTangential ?? s.ShrinkTangential),
            }
                .Where(v => v.Item2?.Tag == SourceTag.Memory)
                .Select(v => v.Item1)
        );
}
