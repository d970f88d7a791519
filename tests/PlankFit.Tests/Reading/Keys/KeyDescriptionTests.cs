using System.Collections.Immutable;
using Mono.Cecil;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Help;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Toml;

namespace PlankFit.Tests.Reading.Keys;

/// <summary>Every key that is read is described, every description is read, and what it says of itself holds.</summary>
public class KeyDescriptionTests
{
    public static TheoryData<string> Valued =>
        new(KeyPath.All.Where(k => k.Table is null).Select(k => k.Path));

    [Fact]
    public void TheJobThatHasEveryKeyIsSound()
    {
        foreach (string job in EveryKey.Others.Prepend(EveryKey.Job))
        {
            ReadResult read = EveryKey.Read(job);
            Assert.True(
                read.Job is not null,
                string.Join('\n', read.Findings.Select(f => f.Where + ": " + f.Message))
            );
        }

        Assert.All(
            KeyPath.All.Where(k => k.Path is not "nest.least.outer"),
            k =>
                Assert.Contains(
                    k.Key.Name,
                    EveryKey.Job + string.Concat(EveryKey.Others),
                    StringComparison.Ordinal
                )
        );
    }

    /// <summary>The reader takes a key only where it is described; this is the other half, and that the first holds at all.</summary>
    [Fact]
    public void EveryDescriptionIsReadAndNothingElse()
    {
        var asked = new HashSet<string>();
        foreach (string job in EveryKey.Others.Prepend(EveryKey.Job))
        {
            JobBinder.Read(job, "job.toml", asked);
        }

        // Keys of least are the names of the layers.
        const string least = "nest.least.";
        string[] read =
        [
            .. asked
                .Select(a => a.StartsWith(least, StringComparison.Ordinal) ? least + "outer" : a)
                .Distinct(),
        ];
        Assert.Equal(KeyPath.All.Select(k => k.Path).Order(), read.Order());
    }

    [Fact]
    public void AKeyThatTheTableIsDescribedWithoutCannotBeRead()
    {
        TableReader table = Table("width = 9", OutputKeys.Table, []);
        Assert.Throws<ArgumentException>(() =>
            table.Length(LayerKeys.Width, LengthUnit.Millimetre)
        );
    }

    /// <summary>Nobody goes by the reader to the tree of the file, where keys are strings.</summary>
    [Fact]
    public void OnlyTheReaderLooksForKeys()
    {
        IEnumerable<string> looking =
            from type in AssemblyDefinition
                .ReadAssembly(typeof(JobReader).Assembly.Location)
                .MainModule.Types
            from method in type.Methods.Concat(type.NestedTypes.SelectMany(t => t.Methods))
            where
                type.Name != nameof(TomlTable)
                && method.HasBody
                && method.Body.Instructions.Any(i =>
                    i.Operand is MethodReference called
                    && called.DeclaringType.Name == nameof(TomlTable)
                    && called.Name is "Find" or "get_Entries"
                )
            select type.Name;
        Assert.Equal(
            [nameof(TableReader), nameof(TomlTreeBuilder)],
            looking.Distinct().Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void EachIsToldInASentence()
    {
        Assert.True(KeyPath.All.Length > 200);
        Assert.All(
            KeyPath.All,
            k =>
            {
                Assert.Matches("^[A-Z\"].*\\.$", k.Key.What);
                Assert.DoesNotContain("{", k.Key.LimitWords + k.Key.Default);
                Assert.True(k.Key.Example.Length > 0 || k.IsHeaded, k.Path);
                Assert.Matches("^[a-z][a-z-]*$", k.Key.Name);
                Assert.False(k.Key.Required && k.Key.Default is not null, k.Path);
            }
        );
    }

    /// <summary>A default that is a figure, and limits that are more than a sign, come from somewhere, or it is said that they do not.</summary>
    [Fact]
    public void EachFigureHasItsSource() =>
        Assert.All(
            KeyPath.All.Select(k => k.Key is EitherKey either ? either.Plain : k.Key),
            k =>
            {
                bool figure = k switch
                {
                    LengthKey l => l.DefaultMm > 0
                        || l.Likely is not null
                        || l.Limits.Least > 0
                        || l.Limits.Most is not null,
                    NumberKey { Whole: true } n => n.DefaultValue is not null,
                    NumberKey { Unit: "degrees" } n => n.DefaultValue is not null,
                    NumberKey n => n.DefaultValue is not null || n.Likely is not null,
                    QuantityKey => true,
                    _ => false,
                };
                Assert.True(!figure || k.Source is not null, k.Name);
            }
        );

    [Theory]
    [MemberData(nameof(Valued))]
    public void ItsExampleIsReadAndItsDefaultIsWithinItsLimits(string path)
    {
        JobKey key = KeyPath.All.Single(k => k.Path == path).Key;
        List<Finding> findings = [];
        TableReader table = Table(key.Line, new(key), findings);
        object? value = key switch
        {
            TextKey k => table.Text(k),
            LengthKey k => table.Length(k, LengthUnit.Millimetre),
            NumberKey k => table.Number(k),
            QuantityKey k => table.Quantity(k),
            YesNoKey k => table.YesNo(k),
            FilesKey k => table.Text(new TextKey(k.Name, k.Example, k.What)),
            TextsKey k => Some(table.Texts(k)),
            LengthsKey k => Some(LengthList.Of(table, k, LengthUnit.Millimetre)),
            NumbersKey k => table.Numbers(k),
            RatesKey k => RateReader.Of(table, k, 1.1),
            PlacesKey k => Some(PlaceList.Of(table, k, LengthUnit.Millimetre)),
            _ => Choice((dynamic)key, table),
        };
        table.Close();
        Assert.Empty(findings);
        Assert.NotNull(value);
        Assert.True(
            key switch
            {
                LengthKey { DefaultMm: { } mm } k => k.Limits.Hold(mm),
                NumberKey { DefaultValue: { } usual } k => k.Limits.Hold(usual),
                _ => true,
            }
        );
    }

    private static object? Choice<T>(ChoiceKey<T> key, TableReader table)
        where T : struct => table.Choice(key);

    private static object? Some<T>(ImmutableArray<T> list) => list.IsEmpty ? null : list;

    private static TableReader Table(string toml, JobTable keys, List<Finding> findings)
    {
        var text = TomlText.Read(toml, "job.toml", findings);
        return new(text.Root, "[test]", "", keys, new(findings, true, true, new HashSet<string>()));
    }
}
