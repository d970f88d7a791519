using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Export.Glue;

/// <summary>The bars of one session: those that run at one time in lanes of their own, each with its batch's name on it or, where one is too short for that, all of its lane's at the lane's end.</summary>
/// <param name="From">On the hour, minutes, as <paramref name="To"/>.</param>
/// <param name="Told">Lanes' names stand at their ends.</param>
internal sealed record SessionBars(
    double From,
    double To,
    ImmutableArray<SessionBars.Lane> Lanes,
    double LaneMm,
    bool Told
)
{
    private const double UsualLaneMm = 4.2;
    private const double BarMm = 3.2;
    private const double HourMm = 4;
    private const double BetweenSidesMm = 1.5;
    private const double EndMm = 24;
    private const double HoursApartMm = 8;

    public sealed record Lane(Side Side, ImmutableArray<GlueBatch> Batches);

    public double HeightMm =>
        (Lanes.Length * LaneMm)
        + HourMm
        + (Lanes.Select(l => l.Side).Distinct().Count() > 1 ? BetweenSidesMm : 0);

    /// <param name="width">That there is, mm.</param>
    /// <param name="most">It may be no higher, mm.</param>
    public static SessionBars Of(GlueSession session, double width, double most)
    {
        double from = 60 * Math.Floor(session.From / 60),
            to = 60 * Math.Ceiling(session.To / 60);
        ImmutableArray<Lane> lanes =
        [
            .. session
                .Batches.GroupBy(b => b.Side)
                .OrderBy(g => g.Key)
                .SelectMany(g => LanesOf(g.Key, g.OrderBy(b => b.MixAt))),
        ];
        double high = Math.Min(UsualLaneMm, (most - HourMm - BetweenSidesMm) / lanes.Length);
        var bars = new SessionBars(from, to, lanes, high, false);
        return lanes.Any(l => l.Batches.Any(b => bars.NameAt(b, 0, width) is null))
            ? bars with
            {
                Told = true,
            }
            : bars;
    }

    public static void Draw(SheetCanvas pad, Box box, SessionBars bars)
    {
        Box plot = box with
        {
            Bottom = box.Top - bars.HeightMm + HourMm,
            Right = bars.Told ? box.Right - EndMm : box.Right,
        };
        bars.Hours(pad, plot);
        double top = box.Top;
        Side? side = null;
        foreach (Lane lane in bars.Lanes)
        {
            if (side is { } above && above != lane.Side)
            {
                top -= BetweenSidesMm;
            }

            if (side != lane.Side)
            {
                pad.Text(
                    plot.Left - 4,
                    top - (bars.LaneMm / 2) - (Letters.Small / 2),
                    lane.Side == Side.Starboard ? "S" : "P",
                    Letters.Small,
                    bold: true
                );
            }

            side = lane.Side;
            bars.Bars(pad, plot with { Top = top, Bottom = top - bars.LaneMm }, lane);
            top -= bars.LaneMm;
        }
    }

    private static IEnumerable<Lane> LanesOf(Side side, IEnumerable<GlueBatch> batches)
    {
        List<List<GlueBatch>> lanes = [];
        foreach (GlueBatch batch in batches)
        {
            List<GlueBatch>? free = lanes.Find(l => l[^1].Clocks.DownAt <= batch.MixAt);
            if (free is null)
            {
                lanes.Add(free = []);
            }

            free.Add(batch);
        }

        return lanes.Select(l => new Lane(side, [.. l]));
    }

    private void Hours(SheetCanvas pad, Box plot)
    {
        double step = new[] { 60.0, 120, 180, 360 }.First(s =>
            s == 360 || plot.Width * s / (To - From) >= HoursApartMm
        );
        for (double hour = From; hour <= To; hour += step)
        {
            double x = At(plot.Left, plot.Width, hour);
            pad.Line(x, plot.Bottom, x, plot.Top, Pens.Rule);
            pad.Text(
                new(x, plot.Bottom - HourMm + 0.8),
                ((int)(hour % DayTemperature.Day) / 60).ToString(
                    "00",
                    CultureInfo.InvariantCulture
                ),
                Letters.Small,
                hour == From ? Anchor.BaselineLeft
                    : hour == To ? Anchor.BaselineRight
                    : Anchor.BaselineCentre
            );
        }
    }

    private void Bars(SheetCanvas pad, Box row, Lane lane)
    {
        double middle = row.Middle.Y,
            half = Math.Min(BarMm, LaneMm / 1.2) / 2;
        foreach (GlueBatch batch in lane.Batches)
        {
            Box bar = new(
                At(row.Left, row.Width, batch.MixAt),
                middle - half,
                At(row.Left, row.Width, batch.Clocks.DownAt),
                middle + half
            );
            pad.Rectangle(bar, Pens.Measure);
            pad.Rectangle(
                bar with
                {
                    Right = At(row.Left, row.Width, batch.Clocks.OutAt),
                },
                Pens.Cut
            );
            if (!Told && NameAt(batch, row.Left, row.Width) is { } x)
            {
                pad.Text(
                    new(x, middle - (Letters.Small / 2)),
                    batch.Name,
                    Letters.Small,
                    Anchor.BaselineCentre,
                    true
                );
            }
        }

        if (Told)
        {
            pad.Text(
                row.Right + 2,
                middle - (Letters.Small / 2),
                Letters.Shortened(Names(lane), Letters.Small, EndMm - 2),
                Letters.Small,
                bold: true
            );
        }
    }

    /// <summary>B41 to B47; every second one by their first two and the last.</summary>
    private static string Names(Lane lane) =>
        lane.Batches.Length switch
        {
            1 => lane.Batches[0].Name,
            2 => $"{lane.Batches[0].Name}, {lane.Batches[1].Name}",
            _ => $"{lane.Batches[0].Name}, {lane.Batches[1].Name} .. {lane.Batches[^1].Name}",
        };

    /// <summary>The middle of a batch's name: in the part after the pot is empty, or else in the part before; null where neither is long enough.</summary>
    private double? NameAt(GlueBatch batch, double left, double width)
    {
        double mix = At(left, width, batch.MixAt),
            empty = At(left, width, batch.Clocks.OutAt),
            down = At(left, width, batch.Clocks.DownAt),
            wanted = Letters.Width(batch.Name, Letters.Small, true) + 1.2;
        return LaneMm < Letters.Small + 1 ? null
            : down - empty > wanted ? (down + empty) / 2
            : empty - mix > wanted ? (mix + empty) / 2
            : null;
    }

    private double At(double left, double width, double minute) =>
        left + ((minute - From) / (To - From) * width);
}
