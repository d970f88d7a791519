using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>From what the tape said to the table that is planked.</summary>
public static class TapedPlanner
{
    /// <summary>The job whose planks are laid on the hull as it stands, and how that was come by; the job as it is, and null, where nothing was read of the hull.</summary>
    public static (PlankingJob Job, TapedHull? Hull) Of(
        PlankingJob job,
        TrustSpec? trust,
        CancellationToken stop
    )
    {
        if (job.AsBuilt.Tables is not null)
        {
            // Of a plan that is planned again: it is adjusted anew.
            job = job with
            {
                AsBuilt = job.AsBuilt with { Tables = null },
            };
        }

        if (trust is null || job.AsBuilt.Readings.All(r => r.Place.IsOfAPlankOfferedUp))
        {
            return (job, null);
        }

        TapedEdge[] edges =
        [
            .. job
                .AsBuilt.Readings.Where(r => r.Place.Kind == TapeKind.SeamLength)
                .Select(r => r.Place.Edge!.Value),
        ];
        // Marks are those of the planks as drawn, or of those laid on the frames as taped where these are others.
        ImmutableDictionary<TapedEdge, TapedSeamPlace> places =
            edges.Length == 0
                ? ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty
                : EdgePlaces.Of(
                    job,
                    PlankingPlanner.Lay(job with { AsBuilt = AsBuiltSpec.None }, null, null, stop),
                    OnFramesAsTaped(job, trust, stop),
                    edges
                );
        stop.ThrowIfCancellationRequested();
        if (HullAdjuster.Of(job, trust, places) is not { } hull)
        {
            return (job, null);
        }

        IEnumerable<TapeReading> leftOut = job.AsBuilt.Readings.Where(r =>
            r.Place.Kind == TapeKind.SeamLength && !places.ContainsKey(r.Place.Edge!.Value)
        );
        return (
            job with
            {
                AsBuilt = job.AsBuilt with
                {
                    Tables = hull.Tables ?? new(job.Offsets, job.Offsets),
                },
            },
            hull with
            {
                Findings =
                [
                    .. TapedFindings.Of(
                        job,
                        hull,
                        leftOut,
                        [
                            .. places
                                .Where(p => p.Value.IsAsTaped)
                                .Select(p => p.Key.Plank)
                                .Distinct()
                                .Order(),
                        ]
                    ),
                ],
            }
        );
    }

    /// <summary>The planks that the frames and the keel as taped make, no edge of a plank among what was read; null where nothing else was.</summary>
    private static Planked? OnFramesAsTaped(
        PlankingJob job,
        TrustSpec trust,
        CancellationToken stop
    ) =>
        HullAdjuster.Of(job, trust, ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty)
            is { Tables: { } tables }
            ? PlankingPlanner.Lay(
                job with
                {
                    AsBuilt = AsBuiltSpec.None with { Tables = tables },
                },
                null,
                null,
                stop
            )
            : null;
}
