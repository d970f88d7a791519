using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Fastenings;

/// <summary>A timber under one plank: the line along which fastenings are set, and those that are.</summary>
internal sealed class TimberStretch
{
    /// <summary>Where nothing is free along the middle of a backing, these parts of its half-width less the margin are tried, to either side.</summary>
    private static readonly double[] Parts = [-0.5, 0.5, -0.95, 0.95];

    private readonly FasteningLayout plank;
    private readonly TimberUnder under;
    private readonly Clearance timber;
    private readonly List<(double T, Vec2 At)> placed = [];

    /// <param name="timber">What holds on this timber alone; what holds for the plank, its fastenings among it, is asked of the plank each time.</param>
    public TimberStretch(
        FasteningLayout plank,
        TimberUnder under,
        Track track,
        double halfMm,
        Clearance timber
    )
    {
        (this.plank, this.under, this.timber) = (plank, under, timber);
        (Track, HalfMm) = (track, halfMm);
    }

    public string Name => under.Name;

    public PlankId PlankId => plank.Framed.Plank.Id;

    public Track Track { get; }

    /// <summary>Whether the track is the timber's middle, and not an edge of a corner of it.</summary>
    public bool IsMiddle => under.Middle is not null;

    /// <summary>How far beside the middle a fastening may be.</summary>
    public double HalfMm { get; }

    public IEnumerable<double> Placed => placed.Select(p => p.T);

    /// <summary>How far beside the middle places are looked for where there are none on it.</summary>
    public IEnumerable<double> Beside => Parts.Select(p => p * HalfMm);

    /// <summary>The middle, and beside it.</summary>
    public IEnumerable<double> Rows => HalfMm > 0 ? Beside.Prepend(0) : [0];

    /// <summary>What is to spare at a length along, so far beside the middle.</summary>
    public double Spare(double t, double row)
    {
        Vec2 at = Track.At(t, row);
        return Math.Min(timber.At(at), plank.Clear.At(at));
    }

    /// <summary>The same where it is less than nought; else nought.</summary>
    public double Lack(double t, double row)
    {
        Vec2 at = Track.At(t, row);
        return plank.Clear.Lack(at, timber.Lack(at));
    }

    /// <summary>The end of the timber's middle in space, starboard frame.</summary>
    public Vec3 End(bool last) => under.End(last);

    public void Set(double t, double row)
    {
        Vec2 at = Track.At(t, row);
        plank.Set(at, Name);
        placed.Add((t, at));
    }

    /// <summary>Takes out what is set at a length along.</summary>
    /// <returns>Its place, to be put back.</returns>
    public Vec2 TakeOut(double t)
    {
        (double, Vec2 At) point = placed.First(p => p.T == t);
        placed.Remove(point);
        plank.TakeOut(point.At);
        return point.At;
    }

    public void PutBack(double t, Vec2 at)
    {
        plank.Set(at, Name);
        placed.Add((t, at));
    }

    /// <summary>A timber without a fastening, or one that no run along timbers speaks of and whose fastenings are further apart than the spacing; null where all is well.</summary>
    public FasteningGap? Short(FasteningRule rule)
    {
        double[] stops = [0, .. Placed.Order(), Track.LengthMm];
        (double from, double to) = stops.Zip(stops.Skip(1)).MaxBy(g => g.Second - g.First);
        if (placed.Count > 0 && (IsMiddle || to - from <= rule.SpacingMm + RowPlacing.StepMm))
        {
            return null;
        }

        (double spare, Obstacle what, double asks) = Tightest(from, to);
        return new(Name, placed.Count, to - from, new(what, Math.Max(0, spare + asks), asks));
    }

    /// <summary>What stands in the way at the best place of a stretch of the track: other fastenings of the plank only where nothing else does.</summary>
    public (double SpareMm, Obstacle What, double AsksMm) Tightest(double from, double to)
    {
        const int looks = 24;
        Vec2[] places =
        [
            .. Enumerable
                .Range(0, looks)
                .Select(i => Track.At(from + ((to - from) * (i + 0.5) / looks))),
        ];
        (double SpareMm, Obstacle What, double AsksMm) rule = places
            .Select(p => Tightest(p, FasteningLayout.FasteningBeside))
            .MaxBy(t => t.SpareMm);
        return rule.SpareMm < 0
            ? rule
            : places.Select(p => Tightest(p, null)).MaxBy(t => t.SpareMm);
    }

    private (double SpareMm, Obstacle What, double AsksMm) Tightest(Vec2 at, Obstacle? but)
    {
        (double SpareMm, Obstacle What, double AsksMm) ofPlank = plank.Clear.Tightest(at, but);
        (double SpareMm, Obstacle What, double AsksMm) ofTimber = timber.Tightest(at);
        return ofTimber.SpareMm < ofPlank.SpareMm ? ofTimber : ofPlank;
    }
}
