using System.Text;

namespace PlankFit.Tests.Support.Chance;

/// <summary>A hull as a builder might draw it, by chance: its stations, and its table of offsets as text.</summary>
internal sealed class ChanceHull
{
    private readonly double length,
        keelHalf,
        beam,
        rocker,
        deadriseAft,
        warp;
    private readonly bool pointed;

    public ChanceHull(Draw draw)
    {
        length = draw.Between(3200, 9500);
        pointed = draw.Heads(0.25);
        Round = !pointed && draw.Heads(0.3);
        keelHalf = draw.Between(20, 55);
        beam = length * draw.Between(0.1, 0.15);
        rocker = length * draw.Between(0.01, 0.05);
        deadriseAft = draw.Between(7, 20);
        warp = draw.Between(3, 24);
        int stations = draw.Whole(7, 12);
        StationsMm =
        [
            .. Enumerable
                .Range(0, stations)
                .Select(i => length * Math.Pow((double)i / (stations - 1), 1.2)),
        ];
        Table = Write(draw);
    }

    public double LengthMm => length;

    /// <summary>The half-breadth of the chine where it is widest.</summary>
    public double BeamMm => beam;

    public double[] StationsMm { get; }

    /// <summary>There is a line between keel and chine, and sections are round.</summary>
    public bool Round { get; }

    public string Table { get; }

    /// <summary>From keel to chine in the section at <paramref name="x"/>, straight.</summary>
    public double GirthMm(double x) =>
        Math.Sqrt(Math.Pow(ChineY(x) - KeelY(x), 2) + Math.Pow(ChineZ(x) - KeelZ(x), 2));

    private double Forward(double x) => 1 - (x / length);

    private double KeelY(double x) =>
        pointed
            ? keelHalf * Math.Sqrt(1 - Math.Pow(Forward(x), 2)) * (1 - Forward(x))
            : keelHalf * (0.75 + (0.25 * (1 - Forward(x))));

    private double KeelZ(double x) => 40 + (rocker * Math.Pow(Forward(x), 2.5));

    internal double ChineY(double x) =>
        KeelY(x)
        + (pointed ? 0 : 0.22 * beam)
        + (beam * (pointed ? 1 : 0.78) * (1 - Math.Pow(Forward(x), 2.2)));

    internal double ChineZ(double x) =>
        KeelZ(x)
        + (
            (ChineY(x) - KeelY(x))
            * Math.Tan((deadriseAft + (warp * Math.Pow(Forward(x), 1.6))) * Math.PI / 180)
        );

    private string Write(Draw draw)
    {
        var text = new StringBuilder("line,measure");
        text.Append(string.Concat(StationsMm.Select((_, i) => $",{i}"))).Append('\n');
        void Row(string line, string measure, Func<double, double> value) =>
            text.Append($"{line},{measure}")
                .Append(string.Concat(StationsMm.Select(x => "," + draw.Cell(value(x)))))
                .Append('\n');
        Row("", "position", x => x);
        Row("keel edge", "height", KeelZ);
        Row("keel edge", "half-breadth", KeelY);
        if (Round)
        {
            Row(
                "bilge",
                "height",
                x => ((KeelZ(x) + ChineZ(x)) / 2) - (0.02 * (ChineY(x) - KeelY(x)))
            );
            Row(
                "bilge",
                "half-breadth",
                x => ((KeelY(x) + ChineY(x)) / 2) + (0.012 * (ChineY(x) - KeelY(x)))
            );
        }

        Row("chine", "height", ChineZ);
        Row("chine", "half-breadth", ChineY);
        return text.ToString();
    }
}
