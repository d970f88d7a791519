using System.Globalization;
using PlankFit.Draughting.Dxf;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Export;

public class DxfWriterTests
{
    public static TheoryData<DxfVersion, DxfUnit> Kinds =>
        new()
        {
            { DxfVersion.R12, DxfUnit.Millimetre },
            { DxfVersion.R12, DxfUnit.Inch },
            { DxfVersion.R2000, DxfUnit.Millimetre },
            { DxfVersion.R2000, DxfUnit.Inch },
        };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void TheFileHoldsToTheRules(DxfVersion version, DxfUnit units)
    {
        new DxfReading(Bytes(SampleDrawings.Everything, version, units)).HoldToTheRules();
        Drawing undashed = SampleDrawings.Of(
            10,
            10,
            new Polyline("Cut line, waste side", Pen.Thin, SampleDrawings.Square(1, 1, 5), true)
        );
        new DxfReading(Bytes(undashed, version, units)).HoldToTheRules();
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void TheHeaderSaysTheVersionTheUnitAndWhereThePartLies(DxfVersion version, DxfUnit units)
    {
        Drawing drawing = SampleDrawings.Of(
            500,
            500,
            new Polyline("cut", Pen.Thin, [new(25.4, -50.8), new(254, 127)], false)
        );
        var read = new DxfReading(Bytes(drawing, version, units));
        bool inches = units == DxfUnit.Inch;
        Assert.Equal(version == DxfVersion.R12 ? "AC1009" : "AC1015", read.Header("$ACADVER"));
        Assert.Equal(inches ? "1" : "4", read.Header("$INSUNITS"));
        Assert.Equal(inches ? "0" : "1", read.Header("$MEASUREMENT"));
        Assert.Equal(inches ? (1, -2) : (25.4, -50.8), read.HeaderPoint("$EXTMIN"));
        Assert.Equal(inches ? (10, 5) : (254, 127), read.HeaderPoint("$EXTMAX"));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void RepeatedPointsAreDroppedAndTheClosedFlagSet(DxfVersion version, DxfUnit units)
    {
        Drawing drawing = SampleDrawings.Of(
            500,
            500,
            new Polyline(
                "cut",
                Pen.Thin,
                [new(0, 0), new(1e-7, 0), new(254, 0), new(254, 0), new(254, 127), new(0, -1e-9)],
                true
            )
        );
        (bool Closed, List<(double X, double Y)> Points) line = Assert.Single(
            new DxfReading(Bytes(drawing, version, units)).Lines()
        );
        Assert.True(line.Closed);
        (double, double)[] expected =
            units == DxfUnit.Inch ? [(0, 0), (10, 0), (10, 5)] : [(0, 0), (254, 0), (254, 127)];
        Assert.Equal(expected, line.Points);
    }

    [Fact]
    public void TheSameDrawingGivesTheSameBytesInAnyCulture()
    {
        byte[] first = Bytes(SampleDrawings.Everything, DxfVersion.R2000, DxfUnit.Inch);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(first, Bytes(SampleDrawings.Everything, DxfVersion.R2000, DxfUnit.Inch));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ALineWithoutLengthAndAPointThatIsNoneAreRefusedByName()
    {
        Refused([new(3, 4), new(3, 4.00001)], "no length");
        Refused([new(3, 4), new(double.PositiveInfinity, 4)], "not a number");

        static void Refused(Vec2[] points, string word)
        {
            Drawing drawing = SampleDrawings.Of(
                9,
                9,
                new Polyline("cut", Pen.Thin, [.. points], true)
            );
            ArgumentException refused = Assert.Throws<ArgumentException>(() =>
                Bytes(drawing, DxfVersion.R12, DxfUnit.Millimetre)
            );
            Assert.Contains("\"sample\"", refused.Message, StringComparison.Ordinal);
            Assert.Contains(word, refused.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("12½° ⅝ in", "12 1/2 deg 5/8 in")]
    [InlineData("5′ 4″ ± 1", "5' 4\" +/- 1")]
    [InlineData("Ærø, Łódź", "AEro, Lodz")]
    [InlineData("→ 船", "-> ?")]
    [InlineData("a\\P b%%d ^J", "a/P b% %d ^ J")]
    public void TextComesDownToPlainLetters(string text, string expected) =>
        Assert.Equal(expected, DxfText.Ascii(text));

    private static byte[] Bytes(Drawing drawing, DxfVersion version, DxfUnit units)
    {
        var made = new MemoryStream();
        DxfWriter.Write(made, drawing, new DxfOptions(version, units));
        return made.ToArray();
    }
}
