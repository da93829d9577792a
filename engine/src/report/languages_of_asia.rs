//! Names in Chinese, Korean, Vietnamese and Indonesian, as [`super::languages`] has the others.
//! Source: common practice of laboratories, from memory.

use super::meanings::{Form, Meaning, Word, is, spellings};
use crate::soil::Property;

const NOT_USED: Word = Word::Other("not used by this program");

spellings! { CHINESE:
    is(Property::Ph) => "土壤ph 酸碱度";
    is(Property::OrganicMatter) => "有机质 土壤有机质 有机质含量";
    is(Property::OrganicCarbon) => "有机碳 土壤有机碳";
    is(Property::TotalN) => "全氮 总氮";
    is(Property::NitrateN) => "硝态氮";
    is(Property::AmmoniumN) => "铵态氮";
    is(Property::Phosphorus) => "有效磷 速效磷";
    is(Property::Potassium) => "速效钾 有效钾 交换性钾";
    is(Property::Calcium) => "交换性钙 有效钙";
    is(Property::Magnesium) => "交换性镁 有效镁";
    is(Property::Sodium) => "交换性钠";
    is(Property::Sulfur) => "有效硫";
    is(Property::Boron) => "有效硼";
    is(Property::Zinc) => "有效锌";
    is(Property::Manganese) => "有效锰";
    is(Property::Copper) => "有效铜";
    is(Property::Iron) => "有效铁";
    is(Property::Cec) => "阳离子交换量";
    is(Property::BaseSaturation) => "盐基饱和度";
    is(Property::Ec) => "电导率 土壤电导率";
    is(Property::BulkDensity) => "土壤容重 容重";
    is(Property::Sand) => "砂粒 砂粒含量";
    is(Property::Silt) => "粉粒 粉粒含量";
    is(Property::Clay) => "粘粒 黏粒 粘粒含量 黏粒含量";
    is(Property::Lead) => "铅 总铅";
    is(Property::Arsenic) => "砷 总砷";
    is(Property::Cadmium) => "镉 总镉";
    Meaning::Word(NOT_USED) =>
        "碱解氮 水解性氮 缓效钾 全磷 全钾 全盐量 水溶性盐总量 水溶性盐 含水率 含水量 水分 有效钼 有效硅 碳氮比 铬 汞 镍";
    Meaning::Word(Word::Nitrogen) => "氮";
    Meaning::Word(Word::Depth) => "深度 采样深度 取样深度 土层深度";
    Meaning::Word(Word::Texture) => "质地 土壤质地";
    Meaning::Word(Word::Sample(1)) => "地块 地块名称 采样地点 采样点 取样地点 田块";
    Meaning::Word(Word::Sample(3)) => "样品 样品编号 样品名称 样品号 样号 编号";
    Meaning::Word(Word::NameColumn) => "项目 检测项目 测定项目 检验项目 指标";
    Meaning::Word(Word::ResultColumn) => "检测结果 测定值 检测值 测定结果 检验结果 结果";
    Meaning::Word(Word::UnitColumn) => "单位 计量单位";
    Meaning::Word(Word::RatingColumn) => "等级 评价 丰缺等级 判定";
    Meaning::Word(Word::RangeColumn) => "标准值 适宜范围 参考范围 参考值 临界值 限量值 筛选值";
    Meaning::Word(Word::MethodColumn) => "检测方法 检测依据 检验方法 方法";
    Meaning::Word(Word::Advice) => "推荐施肥 施肥建议 推荐用量 施肥量";
}

spellings! { KOREAN:
    is(Property::Ph) => "토양산도";
    is(Property::OrganicMatter) => "유기물 유기물함량";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "유효인산";
    is(Property::Potassium) => "칼륨 치환성칼륨 교환성칼륨";
    is(Property::Calcium) => "칼슘 치환성칼슘 교환성칼슘";
    is(Property::Magnesium) => "마그네슘 치환성마그네슘 교환성마그네슘";
    is(Property::Sodium) => "나트륨 치환성나트륨 교환성나트륨";
    is(Property::Ec) => "전기전도도";
    is(Property::Cec) => "양이온교환용량";
    is(Property::NitrateN) => "질산태질소";
    is(Property::AmmoniumN) => "암모니아태질소";
    is(Property::TotalN) => "전질소";
    is(Property::Boron) => "붕소";
    is(Property::Zinc) => "아연";
    is(Property::Manganese) => "망간";
    is(Property::Copper) => "구리";
    is(Property::Iron) => "철";
    is(Property::Lead) => "납";
    is(Property::Arsenic) => "비소";
    is(Property::Cadmium) => "카드뮴";
    Meaning::Word(Word::Plain) => "치환성 교환성 양이온 치환성양이온 교환성양이온 토양";
    Meaning::Word(NOT_USED) => "유효규산 수분";
    Meaning::Word(Word::Depth) => "깊이 채취깊이 토심";
    Meaning::Word(Word::Texture) => "토성";
    Meaning::Word(Word::Sample(1)) => "시료명 필지명 포장명 재배지";
    Meaning::Word(Word::Sample(3)) => "지번";
    Meaning::Word(Word::NameColumn) => "항목 분석항목 검정항목";
    Meaning::Word(Word::ResultColumn) => "결과 분석결과 검정결과 측정값 분석치 검정치 측정치";
    Meaning::Word(Word::UnitColumn) => "단위";
    Meaning::Word(Word::RatingColumn) => "판정 평가";
    Meaning::Word(Word::RangeColumn) => "적정범위 적정치 기준 적정기준 기준치";
    Meaning::Word(Word::MethodColumn) => "분석방법 방법";
    Meaning::Word(Word::Advice) => "시비량 추천시비량 시비처방 밑거름 웃거름 비료사용량 퇴비";
}

spellings! { VIETNAMESE_AND_INDONESIAN:
    is(Property::OrganicMatter) => "chathuuco bahanorganik";
    is(Property::OrganicCarbon) => "corganik karbonorganik";
    is(Property::TotalN) => "nitrogentotal ntotal";
    is(Property::Cec) => "ktk kapasitastukarkation";
    is(Property::Sand) => "pasir";
    is(Property::Silt) => "debu";
    is(Property::Clay) => "liat";
    Meaning::Word(Word::Plain) => "detieu traodoi dat dd dapatditukar tertukar tersedia tanah";
    Meaning::Word(Word::Depth) => "dosau kedalaman";
    Meaning::Word(Word::Texture) => "tekstur teksturtanah thanhphancogioi";
    Meaning::Word(Word::Sample(1)) => "mau contoh lokasi";
    Meaning::Word(Word::NameColumn) => "chitieu";
    Meaning::Word(Word::ResultColumn) => "ketqua hasil nilai hasilanalisis";
    Meaning::Word(Word::UnitColumn) => "donvi satuan";
    Meaning::Word(Word::RatingColumn) => "danhgia kriteria harkat";
    Meaning::Word(Word::MethodColumn) => "phuongphap metode metoda";
    Meaning::Word(Word::Advice) => "rekomendasi dosis dosispupuk";
}

/// Words of ratings.
pub(super) const RATINGS: &str = "\
    极高 很高 高 中 中等 低 很低 极低 丰富 较丰富 缺乏 适宜 偏高 偏低 \
    높음 낮음 적정 적당 과다 부족 다소높음 다소낮음 \
    rendah sedang tinggi sangat masam agak netral basa rat cao thap ngheo giau";
