using System.Collections.Immutable;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Framing;

/// <summary>What a person should know of the things behind, one side of the boat at a time.</summary>
internal static class FramingFindings
{
    /// <summary>Off the bottom by less than this is on its edge, mm.</summary>
    private const double EdgeMm = 0.5;

    /// <param name="apart">The sides are planked each by itself; otherwise port is starboard's twin.</param>
    public static IEnumerable<Finding> Of(
        ImmutableArray<FramingSpec> things,
        Planked planked,
        Side side,
        SectionFace face,
        IReadOnlyList<FramingStrip> strips,
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>> byPlank,
        bool apart
    )
    {
        string onSide =
            !apart ? ""
            : side == Side.Port ? ", port"
            : ", starboard";
        bool mirrored = !apart && side == Side.Port;
        foreach (FramingSpec spec in things.Where(b => b.Only is null || b.Only == side))
        {
            Plank[] crossed =
            [
                .. planked
                    .PlankLayers.SelectMany(l => l.On(side))
                    .Where(p => byPlank[p.Id].Any(c => c.Of == spec)),
            ];
            FramingStrip[] own = [.. strips.Where(s => s.Of == spec)];
            if (crossed.Length == 0)
            {
                yield return new(
                    Severity.Warning,
                    Where(spec, onSide),
                    spec.Line is FramingLine.Offsets(var elsewhere)
                    && !planked.Job.Hull.Panel.Lines.Contains(elsewhere)
                        ? $"its line '{elsewhere}' does not run on the bottom, and what lies behind is worked out for the bottom only: nothing is marked for it"
                        : "it crosses no plank: look at where its centre is said to run, and at its from and to"
                );
                continue;
            }

            foreach (Finding finding in RunsOff(planked, side, spec, own, face, onSide))
            {
                yield return finding;
            }

            if (spec.Line is FramingLine.Offsets(var line))
            {
                foreach (Finding finding in OffSurface(planked, side, spec, line, onSide))
                {
                    yield return finding;
                }
            }
        }

        foreach (Finding finding in FramingClashes.TooClose(planked, side, face, strips, onSide))
        {
            yield return finding;
        }

        foreach (Finding finding in FramingClashes.Open(planked, side, byPlank, onSide, mirrored))
        {
            yield return finding;
        }
    }

    public static string Where(FramingSpec spec, string onSide) => $"behind {spec.Name}{onSide}";

    /// <summary>Whether a place of the face lies off the bottom, over its keel's side or its chine.</summary>
    public static bool IsOff(SectionFace face, Uv at)
    {
        double scale = face.Surface.At(at.U, at.V).Dv.Norm;
        return (at.V - face.Keel(at.U).V) * scale < -EdgeMm
            || (face.Chine(at.U).V - at.V) * scale < -EdgeMm;
    }

    private static IEnumerable<Finding> RunsOff(
        Planked planked,
        Side side,
        FramingSpec spec,
        FramingStrip[] strips,
        SectionFace face,
        string onSide
    )
    {
        if (spec.IsAcross)
        {
            if (spec.OutToMm is { } to && strips[^1].To < to - (spec.OutFromMm ?? 0) - EdgeMm)
            {
                yield return Off("out-to lies beyond the chine: it ends there", Severity.Warning);
            }

            yield break;
        }

        // What the job does not limit may run out where the bottom narrows; what it does limit was meant to be on it.
        bool meant = spec.FromMm is not null || spec.ToMm is not null || spec.LengthMm is not null;
        ImmutableArray<StationOnHull> stations = planked.HullOf(side).Stations;
        foreach (FramingStrip strip in strips)
        {
            Uv[] places = [.. strip.Nodes.Select(strip.Centre.At)];
            int[] inLength =
            [
                .. Enumerable
                    .Range(0, places.Length)
                    .Where(i => places[i].U >= face.FromU && places[i].U <= face.ToU),
            ];
            int[] on = [.. inLength.Where(i => !IsOff(face, places[i]))];
            if (on.Length == 0)
            {
                yield return Off(
                    "its centre lies wholly off the bottom; only its edge is on it",
                    Severity.Warning
                );
                continue;
            }

            foreach (
                (int at, int next, string way) in new[]
                {
                    (on[0], inLength[0], "ahead of"),
                    (on[^1], inLength[^1], "abaft"),
                }
            )
            {
                if (at != next)
                {
                    var place = FromStation.Of(stations, strip.Points[at].X);
                    yield return Off(
                        $"it runs off the bottom {way} the place {place.Words(planked.Job.Units)}: end it there, or lead it elsewhere",
                        meant ? Severity.Warning : Severity.Note
                    );
                }
            }

            if (on.Length < on[^1] - on[0] + 1)
            {
                yield return Off(
                    "it runs off the bottom and on again: look at its line",
                    Severity.Warning
                );
            }
        }

        Finding Off(string message, Severity severity) =>
            new(severity, Where(spec, onSide), message);
    }

    /// <summary>A line of the table that is not on the planking, nor inside its thickness, is likely another line.</summary>
    private static IEnumerable<Finding> OffSurface(
        Planked planked,
        Side side,
        FramingSpec spec,
        string line,
        string onSide
    )
    {
        const double allowedMm = 5;
        var drawn = LineOnFace.Of(spec, line, planked.Job.Offsets, planked.HullOf(side));
        var stack = Stack.Of(planked.Job);
        (double X, double OffMm)? worst = null;
        for (int i = 0; i <= 60; i++)
        {
            double x = drawn.FromX + ((drawn.ToX - drawn.FromX) * i / 60);
            if (drawn.OffMm(x) is { } height)
            {
                double off = Math.Max(height - stack.OuterMm, stack.InnerMm - height);
                worst = worst is null || off > worst.Value.OffMm ? (x, off) : worst;
            }
        }

        if (worst is { OffMm: > allowedMm } w)
        {
            var place = FromStation.Of(planked.HullOf(side).Stations, w.X);
            yield return new(
                Severity.Warning,
                Where(spec, onSide),
                $"the line '{line}' lies {LengthText.ForPaper(w.OffMm, planked.Job.Units)} off the planking {place.Words(planked.Job.Units)}; it was brought square to it: is it the right line?"
            );
        }
    }
}
