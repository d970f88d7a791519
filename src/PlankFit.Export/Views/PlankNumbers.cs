using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Views;

/// <summary>The planks of a view with their numbers: inside each where it has room, on a leader where it has not.</summary>
/// <param name="LeastMm">Height of capitals below which a number goes on a leader.</param>
/// <param name="MostMm">The greatest height of a number.</param>
internal sealed record PlankNumbers(double LeastMm, double MostMm)
{
    private const double LeaderMm = 6;
    private const double FarthestMm = 60;
    private const double MasterGrey = 0.85;

    /// <summary>What stands in a plank: its number.</summary>
    public Func<Plank, string> Label { get; init; } = p => p.Id.Short;

    /// <summary>A plank's fill, from 0 (black) to 1 (white); the master's alone where a view says nothing.</summary>
    public Func<Plank, double?> Grey { get; init; } =
        p => p.Kind == PlankKind.Master ? MasterGrey : null;

    /// <summary>Whether labels lie along their planks: for labels too long to stand across them.</summary>
    public bool AlongPlanks { get; init; }

    /// <summary>Where numbers may stand: the sheet's inside, or the strip of it that the view has.</summary>
    public Box Within { get; init; } =
        new(
            double.NegativeInfinity,
            double.NegativeInfinity,
            double.PositiveInfinity,
            double.PositiveInfinity
        );

    /// <summary>For a view that is looked at on paper.</summary>
    public static readonly PlankNumbers Usual = new(Letters.Small, 3.2);

    /// <summary>For a view that hangs in the shop.</summary>
    public static readonly PlankNumbers Large = new(Letters.Bench, 4.5);

    /// <summary>Draws outlines already on the sheet and letters them; the master plank is greyed, so that the eye finds where to start.</summary>
    /// <param name="clear">Where no leader may go.</param>
    public void Draw(
        SheetCanvas pad,
        IReadOnlyList<(Plank Plank, IReadOnlyList<Vec2> Paper)> planks,
        Box clear = default
    )
    {
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            pad.Closed(Thinning.Closed(paper, 0.02), Pens.Seam, Layers.Hull, Grey(plank));
        }

        List<(string Number, Vec2 At, IReadOnlyList<Vec2> Paper)> small = [];
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            string number = Label(plank);
            Vec2 at = Interior.DeepestPoint(paper, out double room);
            bool master = plank.Kind == PlankKind.Master;
            double height = Math.Min(MostMm, Fitting(number, room));
            if (AlongPlanks && Along(paper, number, at, room) is { } lying)
            {
                pad.Text(at, number, lying.Height, Anchor.MiddleCentre, master, lying.Turn);
            }
            // The sides of a narrow bow lie so near that the number of one would stand upon that of the other.
            else if (
                height < LeastMm
                || !pad.TextAtFirst(
                    [
                        new(
                            Layers.Text,
                            Pen.Thin,
                            at,
                            number,
                            height,
                            Anchor.MiddleCentre,
                            0,
                            master
                        ),
                    ],
                    Within
                )
            )
            {
                small.Add((number, at, paper));
            }
        }

        // A plank is asked only where its box is come upon: outlines have hundreds of points, and a leader tries hundreds of places.
        (Box Around, IReadOnlyList<Vec2> Paper)[] laid =
        [
            .. planks.Select(p => (Box.Around(p.Paper), p.Paper)),
        ];
        List<(Vec2 From, Vec2 To)> leaders = [];
        foreach ((string number, Vec2 at, IReadOnlyList<Vec2> paper) in small)
        {
            if (!Lead(pad, number, at, laid, clear, leaders))
            {
                Small(pad, number, at, paper, leaders);
            }
        }

        pad.BreakAroundLetters(Layers.Hull);
    }

    /// <summary>Small in its plank, wherever along it there is a place; its seams are broken around it. Where there is none its neighbours tell which it is.</summary>
    private void Small(
        SheetCanvas pad,
        string number,
        Vec2 at,
        IReadOnlyList<Vec2> paper,
        List<(Vec2 From, Vec2 To)> leaders
    )
    {
        (double sin, double cos) = Math.SinCos(Turn(paper));
        Vec2 along = new(cos, sin);
        pad.TextAtFirst(
            Enumerable
                .Range(0, 60)
                .Select(i => at + ((i % 2 == 0 ? 1 : -1) * (i + 1) / 2 * along))
                .Where(p => FlatPolygon.Holds(paper, p))
                .Select(p => new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    p,
                    number,
                    Letters.Small,
                    Anchor.MiddleCentre
                ))
                .Where(l =>
                    !leaders.Any(lead =>
                        Segments.Clip(lead.From, lead.To, Segments.Around(l)) is not null
                    )
                ),
            Within
        );
    }

    /// <summary>The height of lettering that keeps a number inside a circle of this radius, mm.</summary>
    private static double Fitting(string number, double room)
    {
        double width = Letters.Width(number, 1, bold: true);
        return 0.78 * room * 2 / Math.Sqrt(1 + (width * width));
    }

    /// <summary>The height and turn of a label that lies along its plank inside it, upright as far as may be; null where it has no room.</summary>
    private (double Height, double Turn)? Along(
        IReadOnlyList<Vec2> paper,
        string label,
        Vec2 at,
        double room
    )
    {
        double turn = Turn(paper);
        double height = Math.Min(MostMm, 1.3 * room);
        (double sin, double cos) = Math.SinCos(turn);
        Vec2 along = ((Letters.Width(label, height, true) / 2) + 0.5) * new Vec2(cos, sin),
            up = ((height / 2) + 0.4) * new Vec2(-sin, cos);
        bool inside = new[] { along + up, along - up, -1 * (along + up), -1 * (along - up) }.All(
            corner => FlatPolygon.Holds(paper, at + corner)
        );
        return height >= LeastMm && inside ? (height, turn * 180 / Math.PI) : null;
    }

    /// <summary>The direction in which a plank is longest, radians from across the sheet.</summary>
    private static double Turn(IReadOnlyList<Vec2> paper)
    {
        Vec2 mean = (1.0 / paper.Count) * paper.Aggregate(new Vec2(0, 0), (sum, p) => sum + p);
        double xx = paper.Sum(p => (p - mean).X * (p - mean).X),
            xy = paper.Sum(p => (p - mean).X * (p - mean).Y),
            yy = paper.Sum(p => (p - mean).Y * (p - mean).Y);
        return Math.Atan2(2 * xy, xx - yy) / 2;
    }

    /// <summary>On a leader, to the nearest place clear of all planks, of what is lettered already and of the other leaders; false where there is none within reach.</summary>
    private bool Lead(
        SheetCanvas pad,
        string number,
        Vec2 at,
        IReadOnlyList<(Box Around, IReadOnlyList<Vec2> Paper)> planks,
        Box clear,
        List<(Vec2 From, Vec2 To)> leaders
    )
    {
        double half = (Letters.Width(number, Letters.Bench) / 2) + 1;
        for (double reach = LeaderMm; reach < FarthestMm; reach += 2)
        {
            for (int k = 0; k < 16; k++)
            {
                (double sin, double cos) = Math.SinCos(k * Math.PI / 8);
                Vec2 end = at + (reach * new Vec2(cos, sin));
                var box = new Box(
                    end.X - half,
                    end.Y - Letters.Bench,
                    end.X + half,
                    end.Y + Letters.Bench
                );
                Vec2 stop = Segments.Clip(at, end, box) is { } inside ? inside.From : end;
                if (
                    box.Overlaps(clear)
                    || !Within.Holds(new(box.Left, box.Bottom))
                    || !Within.Holds(new(box.Right, box.Top))
                    || planks.Any(p => p.Around.Overlaps(box) && Touches(p.Paper, box))
                    || leaders.Any(l => Segments.Clip(l.From, l.To, box) is not null)
                    || pad.Letterings.Any(l => Segments.Around(l).Overlaps(box))
                    || pad.Letterings.Any(l => Strikes(at, stop, l))
                )
                {
                    continue;
                }

                leaders.Add((at, stop));
                pad.Line(at, stop, Pens.Measure);
                pad.Dot(at, 0.4);
                pad.Text(end, number, Letters.Bench, Anchor.MiddleCentre);
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a line runs through a lettering, turned as it may be.</summary>
    private static bool Strikes(Vec2 from, Vec2 to, Lettering text)
    {
        (double sin, double cos) = Math.SinCos(-text.TurnDegrees * Math.PI / 180);
        Vec2 Back(Vec2 p)
        {
            Vec2 d = p - text.At;
            return text.At + new Vec2((cos * d.X) - (sin * d.Y), (sin * d.X) + (cos * d.Y));
        }

        return Segments.Clip(Back(from), Back(to), Segments.Around(text with { TurnDegrees = 0 }))
            is not null;
    }

    private static bool Touches(IReadOnlyList<Vec2> polygon, Box box)
    {
        for (int i = 0; i < polygon.Count; i++)
        {
            if (Segments.Clip(polygon[i], polygon[(i + 1) % polygon.Count], box) is not null)
            {
                return true;
            }
        }

        return FlatPolygon.Holds(polygon, box.Middle);
    }
}
