using System.Reflection;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Hulls;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Every caution stands in its strip on the narrowest sheet that has one, and what can hurt is named where it can.</summary>
public sealed class CautionTests
{
    /// <summary>A4 standing, less border and air.</summary>
    private const double NarrowestMm = 210 - 16 - 4;

    public static TheoryData<string, string> All()
    {
        var all = new TheoryData<string, string>();
        foreach (
            FieldInfo field in typeof(Cautions)
                .GetFields(BindingFlags.Public | BindingFlags.Static)
                .Where(f => f.IsLiteral)
        )
        {
            all.Add(field.Name, (string)field.GetRawConstantValue()!);
        }

        Panel longest = Panel.Bottom("", "", []) with { Name = "after topside" };
        all.Add(nameof(Cautions.CheckOf), Cautions.CheckOf(longest));
        all.Add(nameof(Cautions.CheckBy), Cautions.CheckBy(longest));
        return all;
    }

    [Theory]
    [MemberData(nameof(All))]
    public void EachHasRoomInItsStrip(string name, string text)
    {
        IReadOnlyList<string> lines = Letters.Wrap(text, Letters.Small, NarrowestMm);
        Assert.True(lines.Count <= 2, $"{name}: {lines.Count} lines, {text.Length} letters");
    }

    [Theory]
    [InlineData("Saw")]
    [InlineData("CheckOf")]
    [InlineData("Joints")]
    [InlineData("Snap")]
    [InlineData("Fasten")]
    public void EpoxyIsNamedWhereItIsUsed(string name) =>
        Assert.Contains("EPOXY", Named(name), StringComparison.Ordinal);

    [Theory]
    [InlineData("Saw")]
    [InlineData("Boards")]
    [InlineData("SettingUp")]
    [InlineData("Pattern")]
    [InlineData("Joints")]
    [InlineData("Panel")]
    public void EyesAndLungsAreNamedWhereThereIsDust(string name)
    {
        Assert.Contains("eyes", Named(name), StringComparison.Ordinal);
        Assert.Contains("lungs", Named(name), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Strength")]
    [InlineData("Joints")]
    [InlineData("Keel")]
    [InlineData("Fasten")]
    [InlineData("SettingUp")]
    public void StrengthIsLeftToCodesAndTheLicensed(string name) =>
        Assert.Matches("licensed|qualified", Named(name));

    private static string Named(string name) => All().Single(r => r.Data.Item1 == name).Data.Item2;
}
