using PlankFit.Export.Words;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>How high a card must be for all that stands on it, found before any of it is drawn.</summary>
/// <param name="FiguresMm">The figures of its ends, or the notes beside them where those are higher.</param>
/// <param name="UsualMm">As high as a card is where nothing asks for more.</param>
internal sealed record CardLayout(CardNotes Notes, double FiguresMm, double UsualMm)
{
    public const double HeaderMm = 8.5;
    private const double StripMm = 37;
    private const double MostOfStripMm = 10.5;

    /// <summary>Between the figures and what is below them.</summary>
    private const double ClearMm = 1.2;

    /// <summary>The words across the foot, and figures that are higher than most, take their room from the picture, which can be smaller; the figures cannot.</summary>
    public double PictureMm =>
        Math.Clamp(
            UsualMm - HeaderMm - FiguresMm - ClearMm - Notes.FootMm,
            StripMm - MostOfStripMm,
            StripMm
        );

    public double NeededMm => HeaderMm + PictureMm + FiguresMm + ClearMm + Notes.FootMm;

    /// <param name="widthMm">Of the card.</param>
    /// <param name="usualMm">As <see cref="UsualMm"/>.</param>
    public static CardLayout Of(CardSubject of, double widthMm, double usualMm, LengthUnit unit)
    {
        (double detail, double column) = Columns(of.Shape);
        double figures = of
            .Shape.Ends.Select(e => FiguresHighMm(of, e, column, unit))
            .DefaultIfEmpty()
            .Max();
        var notes = CardNotes.Of(
            of.Own,
            of.OfParts,
            widthMm - (2 * (detail + 3)) - (column * of.Shape.Ends.Length),
            Math.Max(figures, usualMm - HeaderMm - StripMm - ClearMm),
            widthMm
        );
        return new(notes, Math.Max(figures, notes.ColumnMm), usualMm);
    }

    /// <summary>Widths of the picture of an end and of the figures of one: where a plank has more than two ends their figures need the room more, mm.</summary>
    public static (double Detail, double Column) Columns(Plank plank) =>
        plank.Ends.Length switch
        {
            <= 2 => (58.0, 52.0),
            3 => (46.0, 46.0),
            _ => (42.0, 39.0),
        };

    /// <summary>The column of one end's figures, mm.</summary>
    public static double ColumnOf(Plank plank, PlankEnd end) =>
        Columns(plank).Column + (plank.Ends.Length > 2 ? Wider(plank, end) : 0);

    private static double FiguresHighMm(
        CardSubject of,
        PlankEnd end,
        double columnMm,
        LengthUnit unit
    )
    {
        double width = columnMm + (of.Shape.Ends.Length > 2 ? Wider(of.Shape, end) : 0) - 3;
        return -EndFigures.Draw(
            new SheetCanvas(),
            new(0, 0, width, 0),
            of.Shape,
            end,
            of.ThicknessMm,
            unit
        );
    }

    /// <summary>A bevelled end has more to say than one without: it takes room from those, mm.</summary>
    private static double Wider(Plank plank, PlankEnd end)
    {
        const double MostMm = 10;
        int bevelled = plank.Ends.Count(IsBevelled),
            plain = plank.Ends.Length - bevelled;
        double each = Math.Min(MostMm, bevelled == 0 ? 0 : 5.0 * plain / bevelled);
        return IsBevelled(end) ? each
            : plain == 0 ? 0
            : -each * bevelled / plain;
    }

    private static bool IsBevelled(PlankEnd end) =>
        Math.Abs(end.BevelDegrees) >= EndReading.SquareWithinDegrees;
}
