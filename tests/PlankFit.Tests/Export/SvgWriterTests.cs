using System.Globalization;
using System.Xml.Linq;
using PlankFit.Draughting.Svg;

namespace PlankFit.Tests.Export;

public class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void TheSheetIsInMillimetresAndTitled()
    {
        XElement root = Read(SampleDrawings.Everything);
        Assert.Equal("210mm", root.Attribute("width")!.Value);
        Assert.Equal("297mm", root.Attribute("height")!.Value);
        Assert.Equal("0 0 210 297", root.Attribute("viewBox")!.Value);
        Assert.Equal("S1-07 <outer> & \"face\"", root.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void LinesStandWhereTheyWereDrawnWithYTurnedDown()
    {
        var paths = Read(SampleDrawings.Everything).Descendants(Svg + "path").ToList();
        Assert.Equal("M20 147 120 147 120 47 20 47Z", paths[0].Attribute("d")!.Value);
        Assert.Equal("0.25", paths[0].Attribute("stroke-width")!.Value);
        Assert.Equal("#e6e6e6", paths[1].Attribute("fill")!.Value);
        Assert.Equal("2.5 1.5", paths[2].Attribute("stroke-dasharray")!.Value);
    }

    [Fact]
    public void LayersAreGroupsAndTextIsText()
    {
        XElement root = Read(SampleDrawings.Everything);
        IEnumerable<string> layers = root.Elements(Svg + "g")
            .Select(g => g.Attribute("class")!.Value);
        Assert.Equal(["cut", "net", "marks", "text"], layers);
        var texts = root.Descendants(Svg + "text").ToList();
        Assert.Equal("S1-07 outer face up, 12½° ⅝ in", texts[0].Value);

        // Middle of the capitals at y = 45: the baseline is half their height lower, 297 - 45 + 3 from the top.
        Assert.Equal("255", texts[1].Attribute("y")!.Value);
        Assert.Equal("middle", texts[1].Attribute("text-anchor")!.Value);
        Assert.Equal("rotate(-90 200 197)", texts[3].Attribute("transform")!.Value);
    }

    [Fact]
    public void TheSameDrawingGivesTheSameBytesInAnyCulture()
    {
        byte[] first = Bytes(SampleDrawings.Everything);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(first, Bytes(SampleDrawings.Everything));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void APointThatIsNotANumberIsRefusedByName()
    {
        Drawing faulty = SampleDrawings.Of(
            100,
            100,
            new Polyline("cut", Pen.Thin, [new(0, 0), new(double.NaN, 1)], false)
        );
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Bytes(faulty));
        Assert.Contains("\"sample\"", refused.Message, StringComparison.Ordinal);
        Assert.Contains("cut", refused.Message, StringComparison.Ordinal);
        Assert.Contains("point 2", refused.Message, StringComparison.Ordinal);
    }

    private static XElement Read(Drawing drawing) =>
        XDocument.Load(new MemoryStream(Bytes(drawing))).Root!;

    private static byte[] Bytes(Drawing drawing)
    {
        var made = new MemoryStream();
        SvgWriter.Write(made, drawing);
        return made.ToArray();
    }
}
