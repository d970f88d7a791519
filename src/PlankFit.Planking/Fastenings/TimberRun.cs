using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// A timber of one layer and side from plank to plank: stretches on its middle, end to end, with a common measure along it, mm. Spacing runs along the timber,
/// whatever planks lie on it.
/// </summary>
internal sealed class TimberRun
{
    private readonly List<(TimberStretch On, double From, bool Turned)> stretches = [];
    private double length;

    private TimberRun() { }

    public string Name => stretches[0].On.Name;

    public double LengthMm => length;

    public IEnumerable<(TimberStretch On, double FromMm, double ToMm)> Stretches =>
        stretches.Select(s => (s.On, s.From, s.From + s.On.Track.LengthMm));

    /// <summary>Every fastening on it, from its start.</summary>
    public List<TimberStop> Stops
    {
        get
        {
            var stops = new List<TimberStop>();
            foreach ((TimberStretch On, double From, bool Turned) s in stretches)
            {
                foreach (double t in s.On.Placed)
                {
                    // They come nearly in order.
                    double along = Along(s, t);
                    int at = stops.Count;
                    while (at > 0 && stops[at - 1].AlongMm > along)
                    {
                        at--;
                    }

                    stops.Insert(at, new(along, s.On, t));
                }
            }

            return stops;
        }
    }

    /// <summary>The runs of one timber.</summary>
    /// <param name="all">Its stretches, plank by plank; those not on its middle are left out.</param>
    /// <param name="apartMm">Stretches whose ends are further from each other are not the same run.</param>
    public static IEnumerable<TimberRun> Of(IEnumerable<TimberStretch> all, double apartMm)
    {
        TimberStretch[] middle = [.. all.Where(s => s.IsMiddle)];
        TimberRun? run = null;
        for (int i = 0; i < middle.Length; i++)
        {
            TimberStretch here = middle[i];
            (double gap, bool turned) = (0, false);
            if (run is not null)
            {
                Vec3 end = run.stretches[^1].On.End(!run.stretches[^1].Turned);
                double straight = end.ChordTo(here.End(false)),
                    back = end.ChordTo(here.End(true));
                (gap, turned) = (Math.Min(straight, back), back < straight);
                if (gap > apartMm)
                {
                    yield return run;
                    run = null;
                }
            }

            if (run is null)
            {
                // Towards the next.
                turned =
                    i + 1 < middle.Length
                    && Nearest(here.End(false), middle[i + 1])
                        < Nearest(here.End(true), middle[i + 1]);
                (run, gap) = (new(), 0);
            }

            run.stretches.Add((here, run.length + gap, turned));
            run.length += gap + here.Track.LengthMm;
        }

        if (run is not null)
        {
            yield return run;
        }
    }

    /// <summary>Where a place along the run lies on a stretch of it.</summary>
    public double On(TimberStretch stretch, double alongMm)
    {
        (TimberStretch on, double from, bool turned) = stretches.Find(s => s.On == stretch);
        return turned ? on.Track.LengthMm - (alongMm - from) : alongMm - from;
    }

    public double Along(TimberStretch stretch, double t) =>
        Along(stretches.Find(s => s.On == stretch), t);

    private static double Along((TimberStretch On, double From, bool Turned) s, double t) =>
        s.From + (s.Turned ? s.On.Track.LengthMm - t : t);

    private static double Nearest(Vec3 p, TimberStretch to) =>
        Math.Min(p.ChordTo(to.End(false)), p.ChordTo(to.End(true)));
}

/// <summary>A fastening on a run.</summary>
internal sealed record TimberStop(double AlongMm, TimberStretch On, double T);
