using SheetGen.Drawing.Templating;
using Xunit;

namespace SheetGen.Tests.Drawing;

public class LanguageTests
{
    [Fact]
    public void Each_language_that_the_program_carries_is_complete()
    {
        Assert.Contains("english", TemplateReader.Languages);
        Assert.Contains("spanish", TemplateReader.Languages);
        foreach (string name in TemplateReader.Languages)
        {
            Language language = TemplateReader.Default(null, null, name).Language;
            Assert.All(Enum.GetValues<Phrase>(), p => Assert.NotEmpty(language.Say(p)));
        }
    }

    [Fact]
    public void Spanish_says_it_in_spanish_with_the_same_values()
    {
        Language spanish = TemplateReader.Default(null, null, "spanish").Language;

        Assert.Equal("EST. 12+34.56 A 13+00", spanish.Say(Phrase.StationRange, "12+34.56", "13+00"));
        Assert.Equal("NO PERFORAR", spanish.Say(Phrase.DoNotDrill));
    }

    [Fact]
    public void Spanish_notes_ask_for_the_same_fields_as_the_english_ones()
    {
        static IEnumerable<string> Fields(DrawingTemplates t) => t.Notes.SelectMany(b => b.Notes)
            .SelectMany(n => System.Text.RegularExpressions.Regex.Matches(n, "\\{[a-z_]+\\}").Select(m => m.Value)).Order(StringComparer.Ordinal);

        Assert.Equal(Fields(TemplateReader.Default()), Fields(TemplateReader.Default(null, null, "spanish")));
    }

    [Fact]
    public void A_value_is_never_taken_for_a_field()
    {
        Language english = TemplateReader.Default().Language;

        Assert.Equal("{1} TO B", english.Say(Phrase.MarksFromTo, "{1}", "B"));
    }

    [Fact]
    public void The_projects_own_word_names_a_design_section()
    {
        Language english = TemplateReader.Default().Language;

        Assert.Equal("DESIGN ZONE A", english.WithZone(null).Say(Phrase.ZoneName, "A"));
        Assert.Equal("REACH A", english.WithZone("Reach").Say(Phrase.ZoneName, "A"));
        Assert.Equal("Reach A, 1+00 to 1+04: no nail", english.WithZone("Reach").Sentence("section A, 1+00 to 1+04: no nail"));
        Assert.Equal("design zone A asks for 2 verification test nails", english.WithZone(null).Sentence("section A asks for 2 verification test nails"));
    }

    [Theory]
    [InlineData("{", "cannot be read")]
    [InlineData("{\"phrases\": {\"NoSuchPhrase\": \"X\"}}", "\"NoSuchPhrase\" is no phrase")]
    [InlineData("{\"phrases\": {\"NoSuchPhrase\": \"X\"}}", "the phrase \"Station\" is missing")]
    [InlineData("{\"phrases\": {\"Station\": \"KM\"}}", "the phrase \"Station\" has other fields")]
    public void A_bad_language_names_every_fault(string json, string why)
    {
        FormatException fault = Assert.Throws<FormatException>(() => TemplateReader.WithLanguage(TemplateReader.Default(), json));

        Assert.Contains(why, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_of_the_take_off_takes_the_words_of_the_language_and_keeps_its_units()
    {
        Language english = TemplateReader.Default().Language.WithZone(null);

        Assert.Equal("Tributary area, mean, ft2", english.Term("Area a nail, mean, ft2"));
        Assert.Equal("DESIGN ZONE", english.Term("Section"));
        Assert.Equal("An agency's own words", english.Term("An agency's own words"));
    }
}
