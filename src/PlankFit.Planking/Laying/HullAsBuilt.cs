using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Laying;

/// <summary>The bottom's surface on one side, in the starboard frame, corrected to the girths that were measured there.</summary>
internal static class HullAsBuilt
{
    /// <summary>Whether anything was measured for which the two sides can no longer be each other's mirror images.</summary>
    public static bool SidesDiffer(PlankingJob job)
    {
        AsBuiltSpec s = job.AsBuilt;
        if (s.Tables is { } tables)
        {
            // Girths are among what the hull is adjusted to.
            s = s with
            {
                Tables = null,
                Girths = [],
            };
            return !SameValue.Are(tables.Starboard, tables.Port)
                || SidesDiffer(job with { AsBuilt = s });
        }

        return Differ(s.KeelHalfWidths, m => m.Side, m => (m.Layer, m.Station, m.Mm))
            || Differ(s.Girths, m => m.Side, m => (m.Station, m.Mm))
            || Differ(s.Seams, m => m.Side, m => (OfStarboard(m.PlankId), m.At, m.Mm))
            || Differ(s.Fitted, p => p.Side, OfStarboard);
    }

    /// <summary>The hull; the one made before where it would be the same.</summary>
    public static LoftedHull Of(PlankingJob job, Side side, LayWorkings? before)
    {
        PlankingJob from = LinesJob(job, side);
        return before?.Hulls.FirstOrDefault(h => SameValue.Are(h.From, from))
            ?? new(from, Corrected(from, side).Hull);
    }

    /// <summary>A job as far as a side's lines go: its table and the girths measured there, which lie on the inner face of the stack.</summary>
    private static PlankingJob LinesJob(PlankingJob job, Side side)
    {
        if (job.AsBuilt.Tables is { } tables)
        {
            return new(
                default,
                tables.Of(side),
                job.Hull,
                [],
                EndRules.Default,
                BendLimits.Default
            );
        }

        ImmutableArray<MeasuredGirth> girths = [.. job.AsBuilt.Girths.Where(g => g.Side == side)];
        ImmutableArray<LayerSpec> layers = girths.IsEmpty
            ? []
            : [.. job.Layers.Select(l => new ClothLayerSpec(l.Name, l.ThicknessMm))];
        return new(default, job.Offsets, job.Hull, layers, EndRules.Default, BendLimits.Default)
        {
            AsBuilt = new() { Girths = girths },
        };
    }

    /// <summary>The table with its chine (and the lines between) moved along each section until the girths are those measured; and by how much, where.</summary>
    public static CorrectedHull Corrected(PlankingJob job, Side side)
    {
        ImmutableArray<MeasuredGirth> girths = [.. job.AsBuilt.Girths.Where(g => g.Side == side)];
        return job.AsBuilt.Tables is { } tables
            ? GirthCorrection.To(job, tables.Of(side), girths)
            : GirthCorrection.Of(job, girths);
    }

    /// <summary>Whether what is sawn makes the two sides differ: other planks or otherwise sawn, and the hull or the job has moved since.</summary>
    public static bool SawnApart(PlankingJob job, IReadOnlyList<LaidLayer> asDrawn)
    {
        ImmutableArray<SawnPlank> cut = job.AsBuilt.Sawn;
        return Differ(
                cut,
                c => c.Side,
                c => (OfStarboard(c.Id), c.SeamEnds(false), c.SeamEnds(true))
            )
            && (
                !job.AsBuilt.NothingMeasured
                || asDrawn.Any(l =>
                    new[] { Side.Starboard, Side.Port }.Any(side =>
                        !SawnSeams.ArePlanned(
                            l.Faces.Middle,
                            l.Row,
                            LayerPlanner.CutOf(job, l.Number, side),
                            l.Tracing
                        )
                    )
                )
            );
    }

    private static PlankId OfStarboard(PlankId plank) => plank with { Side = Side.Starboard };

    private static bool Differ<T, TKey>(
        ImmutableArray<T> all,
        Func<T, Side> side,
        Func<T, TKey> key
    ) =>
        !all.Where(m => side(m) == Side.Starboard)
            .Select(key)
            .ToHashSet()
            .SetEquals(all.Where(m => side(m) == Side.Port).Select(key));
}
