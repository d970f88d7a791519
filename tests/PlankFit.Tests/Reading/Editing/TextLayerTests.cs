using PlankFit.Reading.Editing;

namespace PlankFit.Tests.Reading.Editing;

/// <summary>Layers as they stand in the text of a job.</summary>
public sealed class TextLayerTests
{
    /// <summary>The bottom may be named or not: it is the same panel, and its layers are counted together; cloth is none of them.</summary>
    [Fact]
    public void TheBottomByItsNameIsTheBottom()
    {
        TextLayer[] layers =
        [
            .. TextLayer.All(
                """
                [[layer]]
                name = "inner"
                panel = "bottom"
                [[layer]]
                name = "side"
                panel = "topside"
                [[layer]]
                kind = "cloth"
                [[layer]]
                name = "outer"
                """
            ),
        ];
        Assert.Equal(
            [("inner", null, 1), ("side", "topside", 1), ("outer", (string?)null, 2)],
            layers.Select(l => (l.Name, l.Panel, l.Number))
        );
    }
}
