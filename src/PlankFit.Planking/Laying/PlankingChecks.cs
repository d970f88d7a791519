using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Laying;

/// <summary>Whether a job's layers can begin to be laid on its hull: the table, the keel, each layer's room and its master plank.</summary>
internal static class PlankingChecks
{
    public static ImmutableArray<Finding> Of(PlankingJob asked)
    {
        // Where planks are sawn the layer heads as they do.
        PlankingJob job = SawnHeads.Kept(asked).Job;
        ImmutableArray<Finding>.Builder found = ImmutableArray.CreateBuilder<Finding>();
        if (!job.Layers.OfType<PlankLayerSpec>().Any())
        {
            found.Add(
                new(
                    Severity.Error,
                    "job",
                    "no layer of planks is named; give at least one [[layer]] with a thickness and a width"
                )
            );
        }

        found.AddRange(KeelChecks.Of(job));
        bool keelIsKnown = found.Count == 0;
        PlankingJob drawn = job with { AsBuilt = AsBuiltSpec.None };
        if (Hull(drawn, Side.Starboard, found) is not { } hull)
        {
            return found.ToImmutable();
        }

        found.AddRange(From(job, hull));
        HullSurface[] others = job.AsBuilt.Girths.IsEmpty
            ? []
            :
            [
                .. new[] { Side.Starboard, Side.Port }
                    .Select(side => Hull(job, side, found))
                    .OfType<HullSurface>(),
            ];
        SideGround? ground = keelIsKnown ? Ground(drawn, hull, found) : null;
        foreach (StackedLayer layer in Stack.Of(job).Layers)
        {
            Finding? fault =
                others
                    .Prepend(hull)
                    .Select(h => LayerChecks.Room(h.Surface, layer, job.Hull.Panel, job.Units))
                    .FirstOrDefault(f => f is not null)
                ?? (ground is null ? null : LayerChecks.Master(ground, layer));
            if (fault is not null)
            {
                found.Add(fault);
            }
        }

        return found.ToImmutable();
    }

    /// <summary>Whether the hull can be lofted and its keel is known.</summary>
    public static bool GroundIsSound(PlankingJob job) =>
        !KeelChecks.Of(job).Any()
        && Hull(
            job with
            {
                AsBuilt = AsBuiltSpec.None,
            },
            Side.Starboard,
            ImmutableArray.CreateBuilder<Finding>()
        )
            is not null;

    private static IEnumerable<Finding> From(PlankingJob job, HullSurface hull)
    {
        if (
            !job.AsBuilt.IsEmpty
            && job.AsBuilt.From is { } name
            && hull.Stations.All(s => s.Name != name)
        )
        {
            yield return new(
                Severity.Error,
                Subject.Of("[as-built] from") with
                {
                    Key = "as-built.from",
                },
                $"station {name} is not one of the {job.Hull.Panel.Name}'s: it runs from {hull.Stations[0].Name} to {hull.Stations[^1].Name}"
            );
        }
    }

    private static HullSurface? Hull(
        PlankingJob job,
        Side side,
        ImmutableArray<Finding>.Builder found
    )
    {
        try
        {
            return HullAsBuilt.Of(job, side, null).Hull;
        }
        catch (JobFaultException fault)
        {
            found.Add(fault.Finding(job.Units));
            return null;
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            // Told by the laying, in whose words the place is.
            return null;
        }
    }

    private static SideGround? Ground(
        PlankingJob job,
        HullSurface hull,
        ImmutableArray<Finding>.Builder found
    )
    {
        try
        {
            return SideGround.Of(job, hull, Side.Starboard, null);
        }
        catch (JobFaultException fault)
        {
            found.Add(fault.Finding(job.Units));
            return null;
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            // Told by the laying, in whose words the place is.
            return null;
        }
    }
}
